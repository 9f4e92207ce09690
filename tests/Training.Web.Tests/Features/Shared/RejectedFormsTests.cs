using System.Net;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Shared;

/// <summary>Whatever form is not taken: it keeps what was typed, says what is wrong beside the field, and the browser begins there.</summary>
[Collection(SharedHouse.Name)]
public sealed partial class RejectedFormsTests(TrainingHouse house)
{
    // Forms whose refusals are no matter of a field: sheets of answers and runs keep what was done by themselves, a text that
    // is written is kept beside the draft, a chosen file cannot be given back, and a check answers whatever is pressed. A run
    // is given up as a record is suspended; the house is set up once.
    private static readonly string[] OfTheirOwn =
    [
        "@Model.ChangeAddress", "/modules/{}/checks/{}", "/desk/drafts/{}", "/desk/drafts", "/desk/drafts/{}/publication", "/packs/look", "/order-items",
        "/people/file", "/runs/{}/signature", "/runs/{}/abandonment", "/set-up",
    ];

    /// <summary>Who posts, from which page, to which form, what, and which field is wrong; an empty one where it is the form as a whole.</summary>
    public static TheoryData<string, string, string, string, string> Forms => new()
    {
        { "", "/sign-in", "/sign-in", "UserName=bao|Password=wrong", "" },
        { "hollis", "/password", "/password", "Current=x|Chosen=a password that is long|Again=another one", "Again" },
        { "hollis", "/people", "/people", "DisplayName=Noor Aziz|UserName=9 bad", "UserName" },
        { "ifeoma", "/people", "/people", "DisplayName=|UserName=noor", "DisplayName" },
        { "ifeoma", "/people", "/people", "DisplayName=Noor|UserName=noor", "Roles" },
        { "ifeoma", "/people", "/people", "DisplayName=Noor|UserName=noor|Roles=owner", "Shop" },
        { "hollis", "/people", "/people?on=14/3/2026", "", "on" },
        { "ifeoma", "/shops", "/shops", "Name=Fernhill Coaches|TimeZone=", "TimeZone" },
        { "hollis", "/people/file", "/people/file/look", "Text=nothing,of,this", "Text" },
        { "hollis", "/coverage", "/coverage/needs", "People=two", "" },
        { "hollis", "/proofs", "/proofs", "ForWhom=Larkfield Haulage", "Records" },
        { "hollis", "/reminders", "/reminders/mail", "Address=no address", "Address" },
        { "hollis", "/jobs", "/jobs", "Customer=Larkfield|Chassis=L18|FirstDay=soon|LastDay=later|Work=Tail lift", "FirstDay" },
        { "hollis", "/jobs", "/jobs", "Customer=Larkfield|Chassis=L18|Kind=bus-l18|FirstDay=2026-12-08|LastDay=2026-12-01|Work=Tail lift", "LastDay" },
        { "hollis", "/jobs", "/jobs", "Customer=Larkfield|Chassis= |Kind=bus-l18|FirstDay=2026-12-01|LastDay=2026-12-08|Work=Tail lift", "Chassis" },
        { "hollis", "{job}", "{job}/crew", "", "" },
        { "hollis", "{record}", "{record}/suspension", "reason=  ", "reason" },
        { "hollis", "{confirmable}", "{confirmable}/confirmation", "work= ", "work" },
        { "ifeoma", "{record}", "{record}/withdrawal", "reason=A forged run.", "sure" },
        { "hollis", "{suspended}", "{suspended}/reinstatement", "reason= ", "reason" },
        { "renske", "/sittings", "/sittings", "Competency=electrical-isolation|Place= ", "Place" },
        { "mateo", "/runs", "/runs", "Chassis= ", "Chassis" },
        { "tomasz", "/desk", "/desk/drafts/new", "sort=Module|title=Tail lifts|name=Tail Lifts", "name" },
        { "ifeoma", "/statements", "/statements.json?shop=rubbish&first=2026-01-01", "", "shop" },
        { "ifeoma", "{person}/name-removal", "{person}/name-removal", "", "sure" },
        { "ifeoma", "/signing-key", "/signing-key/givings-up", "", "sure" },
    };

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task It_keeps_what_was_typed_and_leads_to_what_is_wrong(string who, string page, string address, string typed, string field)
    {
        var visitor = who.Length == 0 ? house.Stranger() : await house.SignedIn(who);
        foreach (var (name, known) in await Examples(visitor, page + address)) (page, address) = (page.Replace(name, known, StringComparison.Ordinal), address.Replace(name, known, StringComparison.Ordinal));
        var opened = await visitor.Get(page);
        var isAsked = address.Contains('?', StringComparison.Ordinal);
        (string Name, string Value)[] fields = [.. typed.Split('|', StringSplitOptions.RemoveEmptyEntries).Select(part => (part.Split('=')[0], part.Split('=')[1]))];
        var form = opened.QuerySelectorAll("form").First(known => known.GetAttribute("action") == address.Split('?')[0] && known.GetAttribute("method") == (isAsked ? "get" : "post"));
        foreach (var tick in form.QuerySelectorAll("input[type=checkbox]").OfType<IHtmlInputElement>()) tick.IsChecked = false;
        var answer = isAsked ? await visitor.Ask(address) : await visitor.Press(form.QuerySelectorAll("button")[^1], fields);
        var shown = answer.StatusCode == HttpStatusCode.Redirect ? await visitor.Follow(answer) : await Visitor.Page(answer);

        var sentence = Assert.Single(shown.QuerySelectorAll("main #wrong"));
        Assert.NotEqual("", sentence.TextContent);
        var again = sentence.Closest("form")!;
        Assert.Equal(address.Split('?')[0], again.GetAttribute("action"));
        Assert.All(again.Ancestors<IElement>().Where(around => around.LocalName == "details"), around => Assert.True(around.HasAttribute("open")));
        Assert.Empty(shown.QuerySelectorAll("main .said-wrong"));
        var begins = Assert.Single(shown.QuerySelectorAll("[autofocus]"));
        var wrong = shown.QuerySelectorAll("[aria-describedby]").Where(known => known.GetAttribute("aria-describedby")!.Split(' ').Contains("wrong")).ToList();
        if (field.Length > 0)
        {
            Assert.Equal(field, Assert.Single(wrong).GetAttribute("name"));
            Assert.Same(wrong[0].LocalName == "fieldset" ? sentence : wrong[0], begins);
            Assert.Equal(wrong.Where(known => known.LocalName != "fieldset"), shown.QuerySelectorAll("[aria-invalid]"));
        }

        foreach (var (name, value) in fields.Where(sent => sent.Name is not ("Password" or "Current" or "Chosen" or "Again")))
            Assert.Contains(value, again.QuerySelectorAll($"[name={name}]").Where(known => known.LocalName != "fieldset").Select(Held));
    }

    [Fact]
    public void Every_form_to_type_in_is_tried()
    {
        var features = Path.Combine(Startup.House.FindRoot(AppContext.BaseDirectory), "src", "Training.Web", "Features");
        var tried = Forms.Select(row => Plain(row.Data.Item3!.Split('?')[0])).Concat(OfTheirOwn).ToHashSet();
        var left = Directory.EnumerateFiles(features, "*.cshtml", SearchOption.AllDirectories)
            .SelectMany(file => Form().Matches(File.ReadAllText(file)).Where(form => Typed().IsMatch(form.Value)).Select(form => (file, action: Plain(form.Groups["action"].Value))))
            .Where(form => !tried.Contains(form.action)).Select(form => $"{Path.GetRelativePath(features, form.file)}: {form.action}");
        Assert.Empty(left);
    }

    private static string Held(IElement field) => field switch
    {
        IHtmlInputElement { Type: "checkbox" or "radio" } tick => tick.IsChecked ? tick.Value : "",
        IHtmlInputElement line => line.Value,
        IHtmlSelectElement list => list.Value ?? "",
        IHtmlTextAreaElement lines => lines.Value,
        _ => "",
    };

    private static string Plain(string action) => action == "@Model.ChangeAddress" ? action : Gap().Replace(
        action.Replace("@address", "/desk/drafts/{}", StringComparison.Ordinal).Replace("@Model.Address", "/runs/{}", StringComparison.Ordinal)
            .Replace("{job}", "/jobs/{}", StringComparison.Ordinal).Replace("{record}", "/records/{}", StringComparison.Ordinal)
            .Replace("{suspended}", "/records/{}", StringComparison.Ordinal).Replace("{confirmable}", "/records/{}", StringComparison.Ordinal).Replace("{person}", "/people/{}", StringComparison.Ordinal), "{}");

    private static async Task<Dictionary<string, string>> Examples(Visitor visitor, string wanted)
    {
        Dictionary<string, string> known = [];
        if (wanted.Contains("{job}", StringComparison.Ordinal)) known["{job}"] = (await visitor.Get("/jobs")).QuerySelector("a[href^='/jobs/']")!.GetAttribute("href")!;
        if (!wanted.Contains("{record}", StringComparison.Ordinal) && !wanted.Contains("{suspended}", StringComparison.Ordinal) && !wanted.Contains("{confirmable}", StringComparison.Ordinal) && !wanted.Contains("{person}", StringComparison.Ordinal)) return known;
        var people = await visitor.Get("/people");
        string Of(string name) => people.QuerySelectorAll("a[href^='/people/']").First(link => link.TextContent == name).GetAttribute("href")!;
        known["{person}"] = Of("Bao Nguyen");
        known["{record}"] = (await visitor.Get(Of("Bao Nguyen"))).QuerySelector("a[href^='/records/']")!.GetAttribute("href")!;
        known["{confirmable}"] = (await visitor.Get(Of("Kwabena Osei"))).QuerySelector("form[action$='/confirmation']")!.GetAttribute("action")!.Replace("/confirmation", "", StringComparison.Ordinal);
        known["{suspended}"] = (await visitor.Get(Of("Sione Tupou"))).QuerySelector("a[href^='/records/']")!.GetAttribute("href")!;
        return known;
    }

    [GeneratedRegex("""<form\b[^>]*?method="post"[^>]*?action="(?<action>[^"]*)".*?</form>""", RegexOptions.Singleline)]
    private static partial Regex Form();

    [GeneratedRegex("""<(textarea|select)\b|<input(?![^>]*type="(hidden|checkbox|radio)")""")]
    private static partial Regex Typed();

    [GeneratedRegex(@"@\(?[\w.]+\)?")]
    private static partial Regex Gap();
}
