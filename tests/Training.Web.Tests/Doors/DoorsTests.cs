using System.Net;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Training.Records.Accounts;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Doors;

/// <summary>Every door of the house, tried by everybody. The doors are taken from the server's own list: a new one is tried without being named here.</summary>
public sealed class DoorsTests(DoorsHouse doors) : IClassFixture<DoorsHouse>
{
    private static readonly (string Role, string UserName)[] OneOfEach =
    [
        (Roles.Technician, "amara"), (Roles.Trainer, "tomasz"), (Roles.Examiner, "renske"), (Roles.Owner, "hollis"), (Roles.Administrator, "ifeoma"),
    ];

    private IReadOnlyList<Door> All => Door.All(doors.House.Services);

    [Fact]
    public void Every_door_says_who_may_come_in() => Assert.DoesNotContain(All, door => !door.SaysWho);

    [Fact]
    public void A_door_that_says_nothing_is_seen()
    {
        var silent = new RouteEndpoint(_ => Task.CompletedTask, RoutePatternFactory.Parse("/quietly"), 0, EndpointMetadataCollection.Empty, "quietly");
        Assert.False(new Door("GET", "/quietly", silent).SaysWho);
    }

    [Fact]
    public void Only_these_doors_are_open_to_everybody() => Assert.Equal(
        [
            "/", "/.well-known/did.json", "/calendar/{token}.ics", "/competencies/{competency}", "/did.json", "/faults/{code:int}", "/language", "/log/checkpoint", "/log/entries/{index:long}",
            "/log/export.jsonl", "/log/extension", "/p/{token}", "/p/{token}/cards.pdf", "/p/{token}/credentials/{credential}.json",
            "/p/{token}/pack.json", "/p/{token}/sheet.pdf", "/set-up", "/sign-in", "/sign-out", "/status/suspended/{number:int}", "/status/withdrawn/{number:int}",
        ],
        All.Where(door => door.IsOpen).Select(door => door.Pattern).Distinct());

    [Fact]
    public void Every_other_door_names_the_roles_but_that_of_ones_own_password() => Assert.Equal(
        ["/password"], All.Where(door => !door.IsOpen && door.Admits()).Select(door => door.Pattern).Distinct());

    [Fact]
    public async Task Whoever_is_not_signed_in_is_led_to_the_sign_in_and_changes_nothing()
    {
        var stranger = doors.House.Stranger();
        var token = (await stranger.Get("/sign-in")).TokenIn();
        var before = doors.Held();
        var wrong = new List<string>();
        foreach (var door in All.Where(door => !door.IsOpen))
        {
            var answer = await Try(stranger, door, token);
            if (answer.StatusCode != HttpStatusCode.Redirect || answer.Headers.Location?.AbsolutePathOf() != "/sign-in")
                wrong.Add($"{door}: {(int)answer.StatusCode} {answer.Headers.Location}");
        }

        Assert.Empty(wrong);
        Assert.Equal(before, doors.Held());
    }

    [Fact]
    public async Task Whoever_has_not_the_role_is_kept_out_and_changes_nothing()
    {
        var wrong = new List<string>();
        var tried = 0;
        foreach (var (role, userName) in OneOfEach)
        {
            var visitor = await doors.House.SignedIn(userName);
            var token = (await visitor.Get("/password")).TokenIn();
            var before = doors.Held();
            foreach (var door in All.Where(door => !door.Admits(role)))
            {
                tried++;
                var answer = await Try(visitor, door, token);
                if (answer.StatusCode != HttpStatusCode.Forbidden) wrong.Add($"{role}, {door}: {(int)answer.StatusCode}");
            }

            Assert.Equal(before, doors.Held());
        }

        Assert.Empty(wrong);
        Assert.True(tried > 80, $"Only {tried} doors were shut to somebody.");
    }

    [Fact]
    public async Task Whoever_has_the_role_sees_a_page_or_a_plain_sentence()
    {
        var wrong = new List<string>();
        foreach (var (role, userName) in OneOfEach)
        {
            var visitor = await doors.House.SignedIn(userName);
            foreach (var door in All.Where(door => door.Method == "GET" && door.Admits(role)))
            {
                var answer = await Try(visitor, door, null);
                if (answer.StatusCode is not (HttpStatusCode.OK or HttpStatusCode.Redirect or HttpStatusCode.NotFound))
                    wrong.Add($"{role}, {door}: {(int)answer.StatusCode}");
            }
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public async Task Another_shops_things_are_not_found_and_not_changed()
    {
        var visitor = await doors.House.SignedIn(DoorsHouse.Foreigner);
        var token = (await visitor.Get("/password")).TokenIn();
        var before = doors.Held();
        var wrong = new List<string>();
        var shopsOwn = All.Where(door => door.Admits(DoorsHouse.ForeignRoles) && door.Parameters.Intersect(DoorsHouse.ShopsOwn).Any()).ToList();
        Assert.True(shopsOwn.Count > 20, $"Only {shopsOwn.Count} doors lead to a shop's own things.");
        // These take the other shop's ids from the form.
        var fromForms = All.Where(door => door is { Method: "POST", Pattern: "/runs" or "/proofs" }).ToList();
        Assert.Equal(2, fromForms.Count);
        foreach (var door in shopsOwn.Concat(fromForms))
        {
            var answer = await Try(visitor, door, token);
            // A page that only leads back to the thing's own page leads to nothing; forbidden is what the role alone decides.
            if (door.Method == "GET" && answer.StatusCode == HttpStatusCode.Redirect)
                answer = await visitor.Ask(answer.Headers.Location!.ToString());
            if (answer.StatusCode is not (HttpStatusCode.NotFound or HttpStatusCode.UnprocessableEntity or HttpStatusCode.Forbidden))
                wrong.Add($"{door}: {(int)answer.StatusCode} {answer.Headers.Location}");
            var said = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            if (said.Contains("Okafor", StringComparison.Ordinal) || said.Contains("Mansour", StringComparison.Ordinal)) wrong.Add($"{door} names somebody");
        }

        Assert.Empty(wrong);
        Assert.Equal(before, doors.Held());
    }

    [Fact]
    public async Task A_form_without_the_houses_token_is_not_taken_and_changes_nothing()
    {
        var wrong = new List<string>();
        foreach (var (role, userName) in OneOfEach)
        {
            var visitor = await doors.House.SignedIn(userName);
            var before = doors.Held();
            foreach (var door in All.Where(door => door.WantsToken && door.Admits(role)))
            {
                var answer = await Try(visitor, door, null);
                if (answer.StatusCode != HttpStatusCode.BadRequest) wrong.Add($"{role}, {door}: {(int)answer.StatusCode}");
            }

            Assert.Equal(before, doors.Held());
        }

        Assert.Empty(wrong);
        Assert.Equal(["/faults/{code:int}"], All.Where(door => door.Method != "GET" && !door.WantsToken).Select(door => door.Pattern).Distinct());
    }

    private async Task<HttpResponseMessage> Try(Visitor visitor, Door door, string? token)
    {
        using var request = new HttpRequestMessage(new HttpMethod(door.Method), door.Address(doors.Examples));
        if (door.Method != "GET")
        {
            IEnumerable<(string Name, string Value)> fields = token is null ? doors.Fields : [("form-token", token), .. doors.Fields];
            request.Content = new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        }

        return await visitor.Client.SendAsync(request);
    }
}

internal static class Locations
{
    /// <summary>The path of an address that may lack its house.</summary>
    public static string AbsolutePathOf(this Uri location) => new Uri(new Uri("http://house"), location).AbsolutePath;
}
