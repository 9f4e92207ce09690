using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Training.Content.Modules;
using Training.Content.Rendering;

namespace Training.Content.Tests.Rendering;

public sealed class LessonRendererTests
{
    private static readonly ContentLibrary Library = ContentReader.Read(ContentFolders.Good).Library!;
    private static readonly Module Tray = Library.FindModule(new("01-relay-tray"))!;
    private readonly LessonRenderer renderer = new(Library, new PlainDrawings());

    private IElement Show(string language = "en") => new HtmlParser().ParseDocument(renderer.Render(Tray, language).Html).Body!;

    [Fact]
    public void The_list_of_contents_has_every_heading_with_an_id_of_its_own()
    {
        Assert.Equal(
            [new("what-can-go-wrong", "What can go wrong", 2), new("one-more-time", "One more time", 3), new LessonSection("one-more-time-2", "One more time", 2)],
            renderer.Render(Tray, "en").Sections);
        Assert.Equal(
            ["what-can-go-wrong", "one-more-time", "one-more-time-2"],
            Show().QuerySelectorAll("h2[id], h3[id]").Select(heading => heading.Id));
    }

    [Fact]
    public void The_ids_of_headings_are_the_same_in_every_language()
    {
        var page = renderer.Render(Tray, "es");
        Assert.Equal(renderer.Render(Tray, "en").Sections.Select(section => section.Id), page.Sections.Select(section => section.Id));
        Assert.Equal("Qué puede fallar", page.Sections[0].Heading);
        Assert.Equal("#what-can-go-wrong", Show("es").QuerySelector("p a")!.GetAttribute("href"));
    }

    [Theory]
    [InlineData("Prove it dead: no voltage", "prove-it-dead-no-voltage")]
    [InlineData("Précaución / Été", "précaución-été")]
    [InlineData("चाबी बंद करें", "चाबी-बंद-करें")]
    [InlineData("90 s, *at least* `now`", "90-s-at-least-now")]
    [InlineData("!?", "section")]
    public void The_id_of_a_heading_is_its_words_in_any_script(string heading, string id)
    {
        var lesson = new Lesson("en", "x", new("modules/01-relay-tray/lesson.md", $"---\ntitle: x\n---\n[x](#{id})\n\n## {heading}\n"));
        var page = renderer.Render(Tray with { Lesson = lesson }, "en");
        Assert.Equal(id, Assert.Single(page.Sections).Id);
        var link = new HtmlParser().ParseDocument(page.Html).QuerySelector("a")!;
        Assert.Equal("#" + id, Uri.UnescapeDataString(link.GetAttribute("href")!));
    }

    [Theory]
    [InlineData("Wait **90 s**, not less.", "Wait 90\u00a0s, not less.")]
    [InlineData("- A load of 12.5 A at 24 V", "A load of 12.5\u00a0A at 24\u00a0V")]
    [InlineData("| Cable | Bears |\n| --- | --- |\n| 2.5 mm² | 1 000 W |", "2.5\u00a0mm²", "1\u00a0000\u00a0W")]
    [InlineData("Esperar 30 min.", "Esperar 30\u00a0min.")]
    [InlineData("90 s रुकें", "90\u00a0s रुकें")]
    [InlineData("Take 2 steps", "Take 2 steps")]
    public void No_line_ends_between_a_number_and_its_unit(string markdown, params string[] shown)
    {
        var lesson = new Lesson("en", "x", new("modules/01-relay-tray/lesson.md", $"---\ntitle: x\n---\n{markdown}\n"));
        var text = new HtmlParser().ParseDocument(renderer.Render(Tray with { Lesson = lesson }, "en").Html).Body!.TextContent;
        Assert.All(shown, part => Assert.Contains(part, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_page_says_which_language_it_is_really_in()
    {
        Assert.Equal("es", renderer.Render(Tray, "es").Language);
        Assert.Equal("en", renderer.Render(Tray, "hi").Language);
    }

    [Fact]
    public void A_caution_bears_its_signal_word_in_the_lessons_language()
    {
        Assert.Equal("Danger", Show().QuerySelector("aside.signal.signal-danger > p.signal-word")!.TextContent);
        Assert.Equal("Peligro", Show("es").QuerySelector("aside.signal.signal-danger > p.signal-word")!.TextContent);
        Assert.NotNull(Show().QuerySelector("aside.signal-danger strong"));
    }

    [Fact]
    public void A_picture_of_its_own_is_a_figure_with_text_caption_and_size()
    {
        var figure = Show().QuerySelector("figure:has(img)")!;
        var image = figure.QuerySelector("img")!;
        Assert.Equal("/modules/01-relay-tray/pictures/tray.svg", image.GetAttribute("src"));
        Assert.Equal("A relay tray seen from above", image.GetAttribute("alt"));
        Assert.Equal(("320", "180"), (image.GetAttribute("width"), image.GetAttribute("height")));
        Assert.Equal("The tray, lid off", figure.QuerySelector("figcaption")!.TextContent);
    }

    [Fact]
    public void A_line_plan_is_drawn_for_the_procedure_and_the_variant() =>
        Assert.Equal("change-relay-tray crane", Show().QuerySelector("figure.line-plan > svg > title")!.TextContent);

    [Fact]
    public void The_two_lists_say_what_to_do_and_what_never_and_why()
    {
        var lists = Show().QuerySelector("section.two-lists")!;
        Assert.Equal(["Do", "Never"], lists.QuerySelectorAll("h3").Select(heading => heading.TextContent));
        var steps = lists.QuerySelectorAll(".list-do > ol > li").Select(item => item.TextContent).ToArray();
        Assert.Equal(6, steps.Length);
        Assert.Equal("Turn the key off", steps[0]);
        Assert.Equal("Hang a tag on the key (if needed)", steps[3]);
        Assert.Equal("One of these:Hang the tray on the hookLay the tray on the bench", steps[4]);
        Assert.Equal("Stow the boom (crane)", steps[5]);
        Assert.Equal("Hose the tray down Water stays in the sockets", lists.QuerySelector(".list-never li")!.TextContent);
    }

    [Fact]
    public void The_two_lists_speak_the_lessons_language()
    {
        var lists = Show("es").QuerySelector("section.two-lists")!;
        Assert.Equal(["Haga", "Nunca"], lists.QuerySelectorAll("h3").Select(heading => heading.TextContent));
        Assert.Equal("Quite el contacto", lists.QuerySelector("ol li")!.TextContent);
    }

    [Fact]
    public void A_worked_reading_is_a_box_of_its_own() =>
        Assert.Equal("Worked example", Show().QuerySelector("section.worked-reading > p.worked-reading-word")!.TextContent);

    [Fact]
    public void Links_lead_to_lessons_headings_and_other_sites() =>
        Assert.Equal(
            ["#what-can-go-wrong", "/modules/02-refit#one-more-time", "#source_1", "https://example.org/relays"],
            Show().QuerySelectorAll("a").Select(link => link.GetAttribute("href")));

    [Fact]
    public void A_table_scrolls_by_itself() => Assert.NotNull(Show().QuerySelector("div.table[tabindex='0'] > table"));

    [Fact]
    public void The_head_of_the_file_is_not_shown() => Assert.DoesNotContain("minutes", renderer.Render(Tray, "en").Html, StringComparison.Ordinal);

    [Fact]
    public void A_situation_is_shown_in_the_language_that_is_wished_for()
    {
        var scenario = Library.FindScenario(new("half-way"))!;
        Assert.Equal("<p>Amara went home. She left a note: <em>key off, waited a minute and a half</em>.</p>", renderer.RenderSituation(scenario, "en").Trim());
        Assert.StartsWith("<p>Amara se fue", renderer.RenderSituation(scenario, "es"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_picture_is_asked_for_in_the_language_of_the_lesson_where_its_labels_are_translated()
    {
        Assert.Equal("/modules/01-relay-tray/pictures/tray.svg", Show().QuerySelector("figure img")!.GetAttribute("src"));
        Assert.Equal("/modules/01-relay-tray/pictures/tray.svg?words=es", Show("es").QuerySelector("figure img")!.GetAttribute("src"));
        Assert.Equal("/modules/01-relay-tray/pictures/tray.svg", Show("hi").QuerySelector("figure img")!.GetAttribute("src"));
    }
}
