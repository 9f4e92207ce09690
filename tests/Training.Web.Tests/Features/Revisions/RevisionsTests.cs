using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Training.Content;
using Training.Records.Publishing;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Revisions;

public sealed class RevisionsTests(ChangedHouse house) : IClassFixture<ChangedHouse>
{
    private const string Address = "/revisions/file?path=procedures%2Fend-isolation.yaml";

    [Fact]
    public async Task A_trainer_reads_which_rule_is_gone_and_how_many_more_orders_are_right()
    {
        var tomasz = await house.House.SignedIn("tomasz");
        var list = await tomasz.Get("/revisions");
        Assert.Contains("procedures/end-isolation.yaml", list.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var page = await tomasz.Get(Address);
        var differs = page.QuerySelector("section[aria-labelledby=differs]")!;
        Assert.Contains($"The rule “{house.Gone}” is gone", differs.QuerySelector(".changes li")!.TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(differs.QuerySelectorAll("h3"));
        Assert.Matches("more orders are right|changes no order", differs.TextContent);
        Assert.Matches("By the older one were judged: [1-9]", differs.TextContent);
    }

    [Fact]
    public async Task The_same_two_the_other_way_round_tell_of_a_new_rule()
    {
        var renske = await house.House.SignedIn("renske");
        var options = (await renske.Get(Address)).QuerySelectorAll("#before option").Select(option => option.GetAttribute("value")).ToList();
        Assert.Equal(2, options.Count);
        var page = await renske.Get($"{Address}&before={options[0]}&after={options[1]}");
        Assert.Contains($"There is a new rule, “{house.Gone}”", page.QuerySelector(".changes li")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lesson_marks_the_words_that_are_new_and_those_that_are_gone()
    {
        var page = await (await house.House.SignedIn("tomasz")).Get("/revisions/file?path=modules%2F01-receive-and-park%2Flesson.md");
        Assert.Contains("it, Receive and park", page.QuerySelector(".words ins")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_neither_trainer_nor_examiner_does_not_see_them()
    {
        var amara = await house.House.SignedIn("amara");
        Assert.Equal(HttpStatusCode.Forbidden, (await amara.Ask("/revisions")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await amara.Ask(Address)).StatusCode);
    }

    [Fact]
    public async Task A_file_or_a_text_that_was_never_published_is_not_found()
    {
        var tomasz = await house.House.SignedIn("tomasz");
        Assert.Equal(HttpStatusCode.NotFound, (await tomasz.Ask("/revisions/file?path=..%2Ftraining.db")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await tomasz.Ask($"{Address}&before={new string('0', 64)}")).StatusCode);
    }
}

/// <summary>A house whose content was changed after it was first published: a rule is gone, and a lesson has another title.</summary>
public sealed class ChangedHouse : IAsyncLifetime
{
    public TrainingHouse House { get; } = new();

    public string Gone { get; private set; } = "";

    public async ValueTask InitializeAsync()
    {
        var content = House.Services.GetRequiredService<Library>().Current.Content;
        var files = ContentFolder.Read(House.Services.GetRequiredService<Startup.House>().Content);
        var written = content.FindProcedure(new("end-isolation"))!;
        foreach (var rule in written.Procedure.Rules)
        {
            var without = WithoutRule(written.File.Text, rule.Id.Value);
            IReadOnlyList<ContentFile> changed =
            [
                .. files.Select(file => file.Path == written.File.Path ? file with { Text = without }
                    : file.Path == "modules/01-receive-and-park/lesson.md" ? file with { Text = file.Text.Replace("\ntitle: ", "\ntitle: Receive and park it, ", StringComparison.Ordinal) }
                    : file.Path.StartsWith("procedures/end-isolation.", StringComparison.Ordinal) ? file with { Text = WithoutRule(file.Text, rule.Id.Value) }
                    : file),
            ];
            if (!ContentReader.Read(changed).IsFit) continue;
            await House.Services.GetRequiredService<Publisher>().Publish(changed);
            Gone = rule.Id.Value;
            return;
        }

        Assert.Fail("No rule of the procedure can be left out.");
    }

    public async ValueTask DisposeAsync() => await House.DisposeAsync();

    /// <summary>The text without the entry of a rule: from its line to the next entry.</summary>
    private static string WithoutRule(string text, string rule)
    {
        var lines = text.Split('\n').ToList();
        var at = lines.FindIndex(line => System.Text.RegularExpressions.Regex.IsMatch(line, $@"^\s*- (\{{ )?id: {rule}(,|$)"));
        if (at < 0) return text;
        var end = at + 1;
        while (end < lines.Count && lines[end].Length > 0 && !lines[end].TrimStart().StartsWith("- ", StringComparison.Ordinal)) end++;
        lines.RemoveRange(at, end - at);
        return string.Join('\n', lines);
    }
}
