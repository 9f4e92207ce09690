using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Styles;

/// <summary>What is written can be read in bright sun: at least 7 to 1, by the formula of WCAG 2.2.</summary>
[Collection(SharedHouse.Name)]
public sealed partial class ContrastTests(TrainingHouse house)
{
    [Fact]
    public void Every_colour_of_letters_stands_out_from_paper_sheet_and_its_own_tint()
    {
        var file = Path.Combine(house.Services.GetRequiredService<IWebHostEnvironment>().WebRootPath, "styles", "site.css");
        var colours = Named().Matches(File.ReadAllText(file)).ToDictionary(match => match.Groups["name"].Value, match => match.Groups["colour"].Value);
        string[] letters = ["ink", "ink-soft", "work", "good", "danger", "warning", "caution", "notice"];
        var faint = (from name in letters
                     from ground in new[] { "paper", "sheet", name + "-tint" }
                     where colours.ContainsKey(ground)
                     let contrast = Contrast(colours[name], colours[ground])
                     where contrast < 7
                     select $"{name} on {ground}: {contrast:0.00}").ToList();
        Assert.Empty(faint);
    }

    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        var parts = new[] { 0, 2, 4 }.Select(at => int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)
            .Select(part => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4)).ToArray();
        return (0.2126 * parts[0]) + (0.7152 * parts[1]) + (0.0722 * parts[2]);
    }

    [GeneratedRegex("--(?<name>[a-z-]+): #(?<colour>[0-9a-f]{6});")]
    private static partial Regex Named();
}
