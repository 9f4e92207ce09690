using AngleSharp.Dom;
using AngleSharp.Html.Dom;

namespace Training.Web.Tests.House;

/// <summary>Sheets of options in a page.</summary>
internal static class OptionSheets
{
    private static readonly string[] Telling = ["value", "checked"];

    /// <summary>
    /// Takes the words of options out, for a question of what can happen offers what authors wrote under "otherwise";
    /// that is no secret there, as long as nothing tells which of it is right.
    /// </summary>
    public static void HideConsequences(this IHtmlDocument page)
    {
        if (page.QuerySelector(".choices legend")?.TextContent != "What can happen?") return;
        foreach (var words in page.QuerySelectorAll(".choice > span")) words.TextContent = "";
    }

    /// <summary>Options are numbered from 1, and nothing but that number and the words tells one from the other.</summary>
    public static void AssertOptionsAreAlike(this IHtmlDocument page)
    {
        var options = page.QuerySelectorAll(".choice").ToList();
        Assert.True(options.Count > 1);
        Assert.Equal(
            Enumerable.Range(1, options.Count).Select(number => $"{number}"),
            options.Select(option => option.QuerySelector("input")!.GetAttribute("value")));
        Assert.Single(options.Select(Shape).Distinct());
    }

    private static string Shape(IElement element) => string.Concat(
        element.LocalName,
        string.Join(' ', element.Attributes.Where(attribute => !Telling.Contains(attribute.Name)).Select(attribute => $"{attribute.Name}={attribute.Value}")),
        string.Concat(element.Children.Select(Shape)));
}
