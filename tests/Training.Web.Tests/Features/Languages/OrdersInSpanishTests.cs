using System.Text.RegularExpressions;
using AngleSharp.Html.Dom;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Publishing;
using Training.Sequencing.Procedures;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Languages;

/// <summary>
/// Whoever reads Spanish meets no order of work in English: the pages are walked from link to link, as the people of the
/// demo can reach them. The desk, where English texts are written, is left out,
/// and so is whatever is asked for in another language.
/// </summary>
public sealed partial class OrdersInSpanishTests(ClockedHouse house) : IClassFixture<ClockedHouse>
{
    // Pages of one kind differ by what they are about; so many of each are looked at.
    private const int MostOfOneKind = 4;

    private static readonly string[] LeftOut =
        ["/drafts", "/desk", "/publishing", "/packs", "/order-items", "/revisions", "/sign-out", "/log"];

    [Theory]
    [InlineData("rania")]
    [InlineData("mateo")]
    [InlineData("renske")]
    [InlineData("tomasz")]
    public async Task No_page_that_somebody_can_reach_shows_a_step_in_English(string name)
    {
        var visitor = await InSpanish(name);
        var english = EnglishTexts();
        var found = new List<string>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var kinds = new Dictionary<string, int>(StringComparer.Ordinal);
        var ahead = new Queue<string>(["/", "/next", "/runs", "/records", "/results", "/sittings", "/scenarios", "/agreement", "/competencies"]);
        while (ahead.TryDequeue(out var address))
        {
            var kind = Ids().Replace(address.Split('?', '#')[0], "/*");
            if (!seen.Add(address) || address.Contains("language=", StringComparison.Ordinal)
                || LeftOut.Any(start => address.StartsWith(start, StringComparison.Ordinal))) continue;
            if ((kinds[kind] = kinds.GetValueOrDefault(kind) + 1) > MostOfOneKind) continue;
            var answer = await visitor.Ask(address);
            if (answer.Headers.Location is { OriginalString: var other }) ahead.Enqueue(other);
            if (!answer.IsSuccessStatusCode || answer.Content.Headers.ContentType?.MediaType != "text/html") continue;
            var page = await Visitor.Page(answer);
            foreach (var leftover in page.QuerySelectorAll("script, style")) leftover.Remove();
            var text = page.Body!.TextContent;
            found.AddRange(english.Where(words => text.Contains(words, StringComparison.Ordinal)).Take(3).Select(words => $"{address}: {words}"));
            foreach (var link in page.QuerySelectorAll("a[href^='/']")) ahead.Enqueue(link.GetAttribute("href")!.Split('#')[0]);
        }

        Assert.Equal([], found);
    }

    [Fact]
    public async Task An_examiner_reads_a_run_in_Spanish_while_it_is_tapped_when_it_has_ended_and_when_it_is_signed()
    {
        var mateo = await InSpanish("mateo");
        var english = EnglishTexts();
        var form = (await mateo.Get("/runs")).QuerySelector("form[action='/runs'] button")!;
        var address = (await mateo.Press(form, ("Variant", "truck-k26"), ("Chassis", "K26-9"))).Headers.Location!.ToString();
        var page = await mateo.Get(address);
        InNoEnglish(page);
        // The first step and a decoy are tapped: findings of several kinds, a replay and a mend.
        foreach (var tap in page.QuerySelectorAll("ul.taps .tap-row:nth-child(2) .tap")) await mateo.Press(tap, ("id", Guid.NewGuid().ToString()));
        InNoEnglish(await mateo.Follow(await mateo.Post($"{address}/ending", page.TokenIn())));
        await mateo.Post($"{address}/ending", page.TokenIn(), ("sure", "yes"));
        page = await mateo.Get(address);
        Assert.NotEmpty(page.QuerySelectorAll("[data-finding]"));
        InNoEnglish(page);
        await mateo.Post($"{address}/signature", page.TokenIn());
        InNoEnglish(await mateo.Get(address));

        void InNoEnglish(IHtmlDocument shown) =>
            Assert.Equal([], english.Where(words => shown.Body!.TextContent.Contains(words, StringComparison.Ordinal)));
    }

    private async Task<Visitor> InSpanish(string name)
    {
        var visitor = await house.SignedIn(name);
        await visitor.Post("/language", (await visitor.Get("/password")).TokenIn(), ("language", "es"), ("back", "/"));
        return visitor;
    }

    // Texts of the shipped procedures that are other words in Spanish; short ones stand in other words, too.
    private IReadOnlyList<string> EnglishTexts() =>
    [
        .. house.Services.GetRequiredService<Library>().Current.Content.Procedures
            .SelectMany(written => Texts(written.Procedure).Except(Texts(written.In("es")))).Where(text => text.Length > 9).Distinct(),
    ];

    private static IEnumerable<string> Texts(Procedure procedure) =>
        procedure.Steps.Select(step => step.Do)
            .Concat(procedure.Decoys.SelectMany(decoy => new[] { decoy.Do, decoy.Because, decoy.Otherwise }))
            .Concat(procedure.Rules.SelectMany(rule => new[] { rule.Because, rule.Otherwise })).OfType<string>();

    [GeneratedRegex("/(?=[^/]*[0-9])[^/]+|(?<=/(results|scenarios|competencies|procedures)/)[^/]+")]
    private static partial Regex Ids();
}
