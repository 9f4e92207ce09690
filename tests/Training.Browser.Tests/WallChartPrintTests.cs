using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace Training.Browser.Tests;

/// <summary>Every wall chart as it leaves the printer.</summary>
public sealed class WallChartPrintTests(OpenHouse house) : IClassFixture<OpenHouse>
{
    // A4 on its side without its margins, in CSS pixels of 1/96 inch.
    private static readonly Screen Sheet = new(1062, 733);

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    [InlineData("hi")]
    public async Task Every_chart_is_one_sheet_that_cuts_nothing_off_in_letters_of_nine_points_or_more(string language)
    {
        var page = await house.DeviceOf("bao", Sheet);
        await using var device = page.Context;
        await page.GotoAsync("/wall-charts");
        var addresses = await page.Locator("main .lines a").EvaluateAllAsync<string[]>("links => links.map(link => link.getAttribute('href'))");
        Assert.Equal(22, addresses.Length);
        var wrong = new List<string>();
        foreach (var address in addresses)
        {
            await page.GotoAsync($"{address}?language={language}");
            using var sheet = PdfDocument.Open(await page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = true }));
            if (sheet.NumberOfPages != 1) wrong.Add($"{address}: {sheet.NumberOfPages} pages");
            var (width, height) = (sheet.GetPage(1).Width, sheet.GetPage(1).Height);
            if (Math.Abs(width - 842) > 1 || Math.Abs(height - 595) > 1) wrong.Add($"{address}: {width} × {height} pt");
            var smallest = sheet.GetPage(1).Letters.Where(letter => !string.IsNullOrWhiteSpace(letter.Value)).Min(letter => letter.PointSize);
            if (smallest < 8.95) wrong.Add($"{address}: letters of {smallest:0.0} pt");
            wrong.AddRange((await CutOff(page)).Select(part => $"{address}: {part}"));
        }

        Assert.Empty(wrong);
    }

    private static async Task<string[]> CutOff(IPage page)
    {
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        var cut = await page.EvaluateAsync<string[]>("""
            () => {
              const cut = [...document.querySelectorAll('.chart, .chart-head, .chart-plan, .chart-side, .chart-foot')]
                .filter(part => part.scrollHeight > part.clientHeight + 1 || part.scrollWidth > part.clientWidth + 1)
                .map(part => `${part.className} is cut off`);
              const plan = document.querySelector('.chart-plan').getBoundingClientRect();
              const side = document.querySelector('.chart-side').getBoundingClientRect();
              for (const text of document.querySelectorAll('.chart-plan text')) {
                const box = text.getBoundingClientRect();
                if (box.right > side.left - 2 || box.bottom > plan.bottom + 2) cut.push(`"${text.textContent}" runs out of the plan`);
              }
              return cut;
            }
            """);
        await page.EmulateMediaAsync(new() { Media = Media.Null });
        return cut;
    }
}
