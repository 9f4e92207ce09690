using System.Net;
using System.Net.Http.Headers;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;

namespace Training.Web.Tests.House;

/// <summary>Somebody with a browser that runs no script.</summary>
/// <param name="client">The browser.</param>
public sealed class Visitor(HttpClient client)
{
    private static readonly HtmlParser Parser = new();

    /// <summary>The browser itself.</summary>
    public HttpClient Client => client;

    /// <summary>Opens a page that must be there.</summary>
    public async Task<IHtmlDocument> Get(string address)
    {
        var answer = await client.GetAsync(address);
        Assert.True(answer.IsSuccessStatusCode, $"GET {address}: {(int)answer.StatusCode} {answer.Headers.Location}");
        return await Page(answer);
    }

    /// <summary>Opens an address, whatever comes.</summary>
    public Task<HttpResponseMessage> Ask(string address) => client.GetAsync(address);

    /// <summary>Posts fields with a form's token.</summary>
    public async Task<HttpResponseMessage> Post(string address, string? token, params (string Name, string Value)[] fields)
    {
        IEnumerable<(string Name, string Value)> all = token is null ? fields : [("form-token", token), .. fields];
        return await client.PostAsync(address, new FormUrlEncodedContent(all.Select(field => KeyValuePair.Create(field.Name, field.Value))));
    }

    /// <summary>Posts fields as a script does, asking for JSON.</summary>
    public async Task<HttpResponseMessage> Send(string address, string? token, params (string Name, string Value)[] fields)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, address)
        {
            Content = new FormUrlEncodedContent(fields.Append(("form-token", token ?? "")).Select(field => KeyValuePair.Create(field.Item1, field.Item2))),
        };
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        return await client.SendAsync(request);
    }

    /// <summary>Presses a button of a page: posts its form with every field and the button's own name and value.</summary>
    public Task<HttpResponseMessage> Press(IElement button, params (string Name, string Value)[] instead)
    {
        var form = button.Closest("form") ?? throw new InvalidOperationException("The button stands in no form.");
        var fields = form.QuerySelectorAll("input[name], textarea[name], select[name]").Where(field => field.Closest("template") is null)
            .Where(field => field is not IHtmlInputElement { Type: "checkbox" or "radio", IsChecked: false })
            .Select(field => (Name: field.GetAttribute("name")!, Value: ((field as IHtmlInputElement)?.Value ?? (field as IHtmlSelectElement)?.Value ?? field.TextContent)))
            .Where(field => instead.All(other => other.Name != field.Name)).Concat(instead);
        if (button.GetAttribute("name") is { } name) fields = fields.Append((name, button.GetAttribute("value") ?? ""));
        var address = button.GetAttribute("formaction") ?? form.GetAttribute("action") ?? "";
        return Post(address.Split('#')[0], null, [.. fields]);
    }

    /// <summary>Goes where a redirect leads.</summary>
    public async Task<IHtmlDocument> Follow(HttpResponseMessage answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, $"{(int)answer.StatusCode} is no redirect: {await answer.Content.ReadAsStringAsync()}");
        return await Get(answer.Headers.Location!.ToString());
    }

    /// <summary>Opens a practice question that is drawn afresh: its bare address leads on to one with its seed.</summary>
    public async Task<IHtmlDocument> Draw(string address) => await Follow(await Ask(address));

    /// <summary>Goes back to a form that was not taken and says why.</summary>
    public async Task<IHtmlDocument> BackTo(HttpResponseMessage answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await Ask(answer.Headers.Location!.ToString());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, page.StatusCode);
        return await Page(page);
    }

    /// <summary>The page that an answer carries.</summary>
    public static async Task<IHtmlDocument> Page(HttpResponseMessage answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return Parser.ParseDocument(await answer.Content.ReadAsStringAsync());
    }
}

/// <summary>What tests look for on pages.</summary>
public static class Pages
{
    /// <summary>The token of the page's forms.</summary>
    public static string TokenIn(this IHtmlDocument page) =>
        page.QuerySelector("input[name=form-token]")?.GetAttribute("value") ?? throw new InvalidOperationException("The page has no form.");

    /// <summary>The button that says this.</summary>
    public static IElement Button(this IHtmlDocument page, string text) =>
        page.QuerySelectorAll("button").FirstOrDefault(button => button.TextContent.Trim() == text)
        ?? throw new InvalidOperationException($"No button says “{text}”: {string.Join(", ", page.QuerySelectorAll("button").Select(button => button.TextContent.Trim()))}");

    /// <summary>What the house said back, good or bad.</summary>
    public static string Said(this IHtmlDocument page) =>
        string.Join(" ", page.QuerySelectorAll("main .said, main .wrong").Select(said => said.TextContent.Trim()));
}
