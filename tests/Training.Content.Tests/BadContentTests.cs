using Training.Content.Rendering;

namespace Training.Content.Tests;

public sealed class BadContentTests
{
    public static TheoryData<string> Cases => [.. BadCase.Names];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_fault_is_told_at_its_place_and_nothing_else(string name)
    {
        var bad = BadCase.Read(name);
        var reading = ContentReader.Read(bad.Files);
        var told = reading.Problems.Select(problem => problem.ToString()).ToArray();
        Assert.NotEmpty(bad.Expected);
        Assert.True(
            told.Length == bad.Expected.Count && told.Zip(bad.Expected).All(pair => pair.First.StartsWith(pair.Second, StringComparison.Ordinal)),
            $"Told:\n{string.Join('\n', told)}\nExpected:\n{string.Join('\n', bad.Expected)}");
        Assert.False(reading.IsFit);
    }

    /// <summary>What was published before somebody asked for more must still be shown.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void What_can_be_read_can_be_shown(string name)
    {
        var reading = ContentReader.Read(BadCase.Read(name).Files);
        Assert.Equal(reading.Problems.Any(problem => problem.Level == ProblemLevel.Error), reading.Library is null);
        if (reading.Library is not { } library) return;
        var renderer = new LessonRenderer(library, new Rendering.PlainDrawings());
        foreach (var module in library.Modules)
            foreach (var lesson in module.Translations.Prepend(module.Lesson))
                Assert.NotEmpty(renderer.Render(module, lesson.Language).Parts);
    }

    [Fact]
    public void The_corpus_is_there() => Assert.True(BadCase.Names.Count() > 60);
}
