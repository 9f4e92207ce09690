using System.Net;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.AspNetCore.Mvc.ViewFeatures;
using Microsoft.AspNetCore.Razor.TagHelpers;

namespace Training.Web.Features.Shared;

/// <summary>
/// A form of a page. Where it is the one that was rejected it holds again what was typed, and says what is wrong: beside
/// the field where it is one, otherwise at its head. Every form of the site is one of these, without saying so.
/// </summary>
[HtmlTargetElement("form", Attributes = "action")]
public sealed class FormTag : TagHelper
{
    /// <summary>The page.</summary>
    [ViewContext]
    [HtmlAttributeNotBound]
    public ViewContext ViewContext { get; set; } = null!;

    /// <inheritdoc/>
    public override async Task ProcessAsync(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        var http = ViewContext.HttpContext;
        if (RejectedForm.Of(http) is not { IsSaid: false } rejected || !Sent(rejected, output)) return;
        // Several forms of a page may lead to one address; what is hidden in them tells them apart.
        var filled = FilledForm.Begin(http, rejected);
        await output.GetChildContentAsync(useCachedResult: false);
        if (filled is { IsOther: false } and ({ HasFields: true } or { Rejected.IsAtOnce: true }))
        {
            filled = FilledForm.Begin(http, rejected);
            filled.Fills = true;
            output.Content = await output.GetChildContentAsync(useCachedResult: false);
            if (!rejected.IsSaid) SayAtHead(output, rejected);
        }

        FilledForm.End(http);
    }

    private static bool Sent(RejectedForm rejected, TagHelperOutput output) =>
        output.Attributes.Text("action")?.Split('#', '?')[0] == rejected.Address
        && rejected.Method.Equals(output.Attributes.Text("method") ?? "get", StringComparison.OrdinalIgnoreCase);

    private static void SayAtHead(TagHelperOutput output, RejectedForm rejected)
    {
        rejected.IsSaid = true;
        var said = new TagBuilder("p");
        foreach (var (name, value) in new[] { ("class", "wrong"), ("role", "alert"), ("id", "wrong"), ("tabindex", "-1"), ("autofocus", "") })
            said.Attributes[name] = value;
        said.InnerHtml.Append(rejected.Sentence);
        output.PreContent.AppendHtml(said);
    }
}

/// <summary>The rejected form of a page while it is written.</summary>
internal sealed class FilledForm(RejectedForm rejected)
{
    private readonly Dictionary<string, int> places = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, bool> hidden = new(StringComparer.OrdinalIgnoreCase);

    public RejectedForm Rejected => rejected;

    /// <summary>Whether what is hidden in the form is not what was sent.</summary>
    public bool IsOther => hidden.ContainsValue(false);

    /// <summary>Whether there is something to type, choose or tick.</summary>
    public bool HasFields { get; set; }

    /// <summary>Whether the form is known to be the rejected one, and its fields are filled.</summary>
    public bool Fills { get; set; }

    /// <summary>What is chosen in the list that is being written; null where it is not known.</summary>
    public string[]? Chosen { get; set; }

    public static FilledForm Begin(HttpContext context, RejectedForm rejected)
    {
        var form = new FilledForm(rejected);
        context.Items[typeof(FilledForm)] = form;
        return form;
    }

    public static void End(HttpContext context) => context.Items.Remove(typeof(FilledForm));

    public static FilledForm? Of(ViewContext context) => context.HttpContext.Items[typeof(FilledForm)] as FilledForm;

    /// <summary>Notes what is hidden in the form: of several values of a name one that was sent will do.</summary>
    public void Hides(string name, bool wasSent) => hidden[name] = wasSent || hidden.GetValueOrDefault(name);

    /// <summary>What was typed into the next field of this name; null where nothing was sent by that name.</summary>
    public string? Next(string name)
    {
        var place = places.GetValueOrDefault(name);
        places[name] = place + 1;
        return rejected.Typed.TryGetValue(name, out var typed) && place < typed.Length ? typed[place] : null;
    }
}

/// <summary>Attributes as they were written.</summary>
internal static class WrittenAttributes
{
    /// <summary>The value of an attribute as plain text; null where it is not there.</summary>
    public static string? Text(this ReadOnlyTagHelperAttributeList attributes, string name) =>
        attributes.TryGetAttribute(name, out var attribute) ? WebUtility.HtmlDecode(attribute.Value?.ToString()) ?? "" : null;
}
