using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.AspNetCore.Mvc.ViewFeatures;
using Microsoft.AspNetCore.Razor.TagHelpers;

namespace Training.Web.Features.Shared;

/// <summary>Something in a form that is typed, chosen or ticked. In the rejected form it keeps that and says what is wrong with it.</summary>
public abstract class FieldTag : TagHelper
{
    /// <summary>The page.</summary>
    [ViewContext]
    [HtmlAttributeNotBound]
    public ViewContext ViewContext { get; set; } = null!;

    /// <summary>Says what is wrong just before the field, and leads there without a script.</summary>
    /// <param name="form">The form.</param>
    /// <param name="output">The field.</param>
    /// <param name="around">The element that the sentence stands in.</param>
    private protected static void Mark(FilledForm form, TagHelperOutput output, string around = "p")
    {
        var rejected = form.Rejected;
        if (rejected.IsSaid || !form.Fills || !rejected.IsAbout(output.Attributes.Text("name"), output.Attributes.Text("id"))) return;
        rejected.IsSaid = true;
        var said = new TagBuilder(around);
        foreach (var (name, value) in new[] { ("class", "wrong"), ("role", "alert"), ("id", "wrong") }) said.Attributes[name] = value;
        said.InnerHtml.Append(rejected.Sentence);
        output.PreElement.AppendHtml(said);
        var described = output.Attributes.Text("aria-describedby");
        output.Attributes.SetAttribute("aria-describedby", string.IsNullOrWhiteSpace(described) ? "wrong" : $"{described} wrong");
        if (output.TagName == "fieldset")
        {
            // Fields together may be longer than the screen: the sentence itself is where to begin.
            said.Attributes["tabindex"] = "-1";
            said.Attributes["autofocus"] = "";
            return;
        }

        output.Attributes.SetAttribute("aria-invalid", "true");
        output.Attributes.SetAttribute(new TagHelperAttribute("autofocus"));
    }
}

/// <summary>A line that is typed, or a tick.</summary>
[HtmlTargetElement("input", Attributes = "name", TagStructure = TagStructure.WithoutEndTag)]
public sealed class LineTag : FieldTag
{
    /// <inheritdoc/>
    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (FilledForm.Of(ViewContext) is not { } form || output.Attributes.ContainsName("disabled")) return;
        var name = output.Attributes.Text("name") ?? "";
        var type = output.Attributes.Text("type") ?? "text";
        var typed = form.Rejected.Typed.GetValueOrDefault(name);
        if (type == "hidden")
        {
            if (typed is not null) form.Hides(name, typed.Contains(output.Attributes.Text("value") ?? ""));
            return;
        }

        form.HasFields = true;
        if (!form.Fills) return;
        var isTick = type is "checkbox" or "radio";
        // A tick that is taken out is not sent: where nothing of what was typed is known, the page's own ticks stand.
        if (isTick && form.Rejected.Typed.Count > 0)
        {
            output.Attributes.RemoveAll("checked");
            if (typed?.Contains(output.Attributes.Text("value") ?? "on") ?? false) output.Attributes.SetAttribute(new TagHelperAttribute("checked"));
        }
        else if (type is not ("password" or "file") && form.Next(name) is { } line)
        {
            output.Attributes.SetAttribute("value", line);
        }

        Mark(form, output, isTick ? "span" : "p");
    }
}

/// <summary>Lines that are typed.</summary>
[HtmlTargetElement("textarea", Attributes = "name")]
public sealed class LinesTag : FieldTag
{
    /// <inheritdoc/>
    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (FilledForm.Of(ViewContext) is not { } form) return;
        form.HasFields = true;
        if (!form.Fills) return;
        // A browser leaves out the first line break of the element.
        if (form.Next(output.Attributes.Text("name") ?? "") is { } typed) output.Content.SetContent("\n" + typed);
        Mark(form, output);
    }
}

/// <summary>A list to choose from.</summary>
[HtmlTargetElement("select", Attributes = "name")]
public sealed class ListTag : FieldTag
{
    /// <inheritdoc/>
    public override async Task ProcessAsync(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (FilledForm.Of(ViewContext) is not { } form) return;
        form.HasFields = true;
        if (!form.Fills) return;
        form.Chosen = form.Rejected.Typed.GetValueOrDefault(output.Attributes.Text("name") ?? "");
        output.Content = await output.GetChildContentAsync();
        form.Chosen = null;
        Mark(form, output);
    }
}

/// <summary>An entry of a list to choose from.</summary>
[HtmlTargetElement("option", Attributes = "value")]
public sealed class EntryTag : FieldTag
{
    /// <inheritdoc/>
    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (FilledForm.Of(ViewContext)?.Chosen is not { } chosen) return;
        output.Attributes.RemoveAll("selected");
        if (chosen.Contains(output.Attributes.Text("value") ?? "")) output.Attributes.SetAttribute(new TagHelperAttribute("selected"));
    }
}

/// <summary>Fields that belong together under a name; what is wrong with them as a whole is said before them.</summary>
[HtmlTargetElement("fieldset", Attributes = "name")]
public sealed class FieldsTag : FieldTag
{
    /// <inheritdoc/>
    public override int Order => -1;

    /// <inheritdoc/>
    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (FilledForm.Of(ViewContext) is { } form) Mark(form, output);
    }
}

/// <summary>Something folded; it is open where the rejected form stands in it.</summary>
[HtmlTargetElement("details")]
public sealed class FoldedTag : FieldTag
{
    /// <inheritdoc/>
    public override async Task ProcessAsync(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (RejectedForm.Of(ViewContext.HttpContext) is not { IsSaid: false } rejected) return;
        output.Content = await output.GetChildContentAsync();
        if (rejected.IsSaid) output.Attributes.SetAttribute(new TagHelperAttribute("open"));
    }
}
