using System.Globalization;

namespace Training.Content.Tests;

public sealed class ContentReaderTests
{
    [Fact]
    public void The_order_of_the_files_does_not_matter()
    {
        var bad = BadCase.Read("competency-names-what-is-not-there").Files;
        Assert.Equal(ContentReader.Read(bad).Problems, ContentReader.Read([.. bad.Reverse()]).Problems);
        Assert.NotNull(ContentReader.Read([.. ContentFolders.Good.Reverse()]).Library);
    }

    [Fact]
    public void Problems_stand_in_the_order_of_files_and_lines()
    {
        var problems = ContentReader.Read([.. BadCase.Read("procedure-several-faults-at-once").Files, new("procedures/Z.yml", "")]).Problems;
        Assert.True(problems.Count >= 4);
        Assert.Equal(problems.OrderBy(problem => problem.File, StringComparer.Ordinal).ThenBy(problem => problem.Line), problems);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("hi-IN")]
    [InlineData("ar-SA")]
    public void The_language_of_the_machine_changes_nothing(string culture)
    {
        var here = ContentReader.Read(BadCase.Read("competency-too-few-scenarios").Files).Problems.Select(problem => problem.ToString()).ToArray();
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Empty(ContentReader.Read(ContentFolders.Good).Problems);
            Assert.Equal(here, ContentReader.Read(BadCase.Read("competency-too-few-scenarios").Files).Problems.Select(problem => problem.ToString()));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Files_with_Windows_line_ends_are_read_the_same()
    {
        var windows = ContentFolders.Good.Select(file => file with { Text = file.Text.ReplaceLineEndings("\r\n") }).ToArray();
        Assert.Empty(ContentReader.Read(windows).Problems);
    }

    [Theory]
    [InlineData("scenarios/at-the-crane.md", "show: []", "show: []\nstart: []\nabsent: []")]
    [InlineData("modules/02-refit/lesson.md", "minutes: 5", "minutes: 5\nsources: []")]
    [InlineData("scenarios/weak-relay.md", "division: 0.005, on", "one-of: [], division: 0.005, on")]
    [InlineData("procedures/change-relay-tray.es.yaml", "facts:\n  key: [llave, puesta, quitada]", "facts: {}")]
    public void A_list_with_nothing_in_it_is_as_good_as_none(string path, string old, string with)
    {
        var files = ContentFolders.Good.Select(file =>
            file.Path == path ? file with { Text = file.Text.Replace(old, with, StringComparison.Ordinal) } : file).ToArray();
        Assert.NotEqual(ContentFolders.Good.Select(file => file.Hash), files.Select(file => file.Hash));
        Assert.Empty(ContentReader.Read(files).Problems);
    }

    [Fact]
    public void A_question_of_the_kind_finish_needs_more_than_an_empty_start()
    {
        var files = ContentFolders.Good.Select(file => file.Path == "scenarios/at-the-crane.md"
            ? file with { Text = file.Text.Replace("kinds: [order]", "kinds: [order, finish]\nstart: []", StringComparison.Ordinal) } : file);
        Assert.Contains("needs \"start\"", Assert.Single(ContentReader.Read([.. files]).Problems).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_given_twice_is_told()
    {
        var problem = Assert.Single(ContentReader.Read([.. ContentFolders.Good, ContentFolders.Good[0]]).Problems);
        Assert.Contains("twice", problem.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_above_1_MiB_is_refused()
    {
        var problems = ContentReader.Read(ContentFolders.With("scenarios/half-way.md", new string('x', ContentFile.LargestSize + 1))).Problems;
        Assert.Contains(problems, problem => problem is { File: "scenarios/half-way.md", Line: 1, Column: 1 });
    }

    [Fact]
    public void No_files_give_an_empty_library()
    {
        var reading = ContentReader.Read([]);
        Assert.Empty(reading.Problems);
        Assert.Empty(reading.Library!.Modules);
    }
}
