using Training.Content.Competencies;
using Training.Content.Modules;
using Training.Content.Scenarios;
using Training.Sequencing.Procedures;

namespace Training.Content.Tests;

public sealed class GoodContentTests
{
    private readonly ContentLibrary library = ContentReader.Read(ContentFolders.Good).Library!;

    [Fact]
    public void A_folder_without_faults_has_no_problems() => Assert.Empty(ContentReader.Read(ContentFolders.Good).Problems);

    [Fact]
    public void Modules_stand_in_the_order_of_their_numbers() =>
        Assert.Equal(["01-relay-tray", "02-refit"], library.Modules.Select(module => module.Id.Value));

    [Fact]
    public void A_module_has_its_lesson_pictures_and_sources()
    {
        var module = library.FindModule(new("01-relay-tray"))!;
        Assert.Equal("Take the relay tray out", module.Title);
        Assert.Equal(15, module.Minutes);
        Assert.Equal([new ProcedureId("change-relay-tray")], module.Procedures);
        Assert.Equal([new Source("Key off before work on relays", "common practice, no published source", SourceKind.Practice) { Id = "key-off" }], module.Lesson.Sources);
        Assert.NotNull(module.FindPicture("pictures/tray.svg"));
        Assert.Null(module.FindPicture("pictures/other.svg"));
    }

    [Fact]
    public void A_translated_lesson_has_the_sources_of_the_lesson_in_its_own_words()
    {
        var spanish = library.FindModule(new("01-relay-tray"))!.In("es");
        Assert.Equal("Saque la bandeja de relés", spanish.Title);
        Assert.Equal(
            [new Source("Contacto quitado antes de tocar relés", "common practice, no published source", SourceKind.Practice) { Id = "key-off", Language = "es" }],
            spanish.Sources);
        Assert.True(spanish.Sources[0].RepeatsItsKind);
    }

    [Fact]
    public void What_a_translation_does_not_say_of_the_sources_falls_back_to_the_lesson()
    {
        const string path = "modules/01-relay-tray/lesson.es.md";
        const string line = "sources:\n  - { id: key-off, name: Contacto quitado antes de tocar relés }\n";
        var text = ContentFolders.File(path).Text;
        Assert.Contains(line, text, StringComparison.Ordinal);
        IReadOnlyList<Source> With(string sources) => ContentReader.Read(ContentFolders.With(path, text.Replace(line, sources, StringComparison.Ordinal)))
            .Library!.FindModule(new("01-relay-tray"))!.In("es").Sources;
        var original = library.FindModule(new("01-relay-tray"))!.Lesson.Sources;
        Assert.Equal(original, With(""));
        Assert.Equal([original[0] with { Where = "en el taller", WhereLanguage = "es" }], With("sources: [{ id: key-off, where: en el taller }]\n"));
        // As it was written before sources had names of their own: whole, in the order of the lesson.
        Assert.Equal("es", Assert.Single(With("sources: [{ name: Contacto, where: aquí, kind: practice }]\n")).Language);
    }

    [Fact]
    public void A_picture_keeps_its_shapes_and_has_the_labels_of_a_language()
    {
        var module = library.FindModule(new("01-relay-tray"))!;
        var spanish = module.FindPicture("pictures/tray.svg", "es")!;
        Assert.Contains(">bandeja<", spanish.Text, StringComparison.Ordinal);
        Assert.NotEqual(module.FindPicture("pictures/tray.svg")!.Hash, spanish.Hash);
        Assert.Same(module.FindPicture("pictures/tray.svg"), module.FindPicture("pictures/tray.svg", "hi"));
        Assert.Null(module.FindPicture("pictures/other.svg", "es"));
    }

    [Fact]
    public void A_language_that_is_not_there_falls_back_to_the_default_language()
    {
        Assert.Equal("en", library.FindModule(new("01-relay-tray"))!.In("hi").Language);
        Assert.Equal("Half way", library.FindScenario(new("half-way"))!.In("hi").Title);
        Assert.Equal("Change the relay tray", library.FindProcedure(new("change-relay-tray"))!.In("hi").Title);
    }

    [Fact]
    public void Words_of_YAML_such_as_on_and_off_are_texts()
    {
        var key = library.FindProcedure(new("change-relay-tray"))!.Procedure.Facts.Single();
        Assert.Equal(["on", "off"], key.Values.Select(value => value.Value));
    }

    [Fact]
    public void A_procedure_is_read_with_all_that_its_file_says()
    {
        var procedure = library.FindProcedure(new("change-relay-tray"))!.Procedure;
        Assert.Equal(3, procedure.Revision);
        Assert.Equal(["crane", "tipper"], procedure.Variants.Select(variant => variant.Value));
        var keyOff = procedure.Steps[0];
        Assert.Equal(Duration.FromSeconds(5), keyOff.Takes);
        Assert.Equal([new FactSetting(new("key"), new("off"))], keyOff.Sets);
        Assert.True(procedure.Steps[1].IsWait);
        Assert.Equal(new Stakes(Harm.Equipment, Severity.Minor), procedure.Steps[2].Stakes);
        Assert.True(procedure.Steps[3].IsOptional);
        Assert.Equal(new ChoiceId("parking-place"), procedure.Steps[4].Choice);
        Assert.Equal([new VariantId("crane")], procedure.Steps[6].Variants);
        Assert.Equal("They rot", procedure.Decoys.Single().Otherwise);
        var rest = Assert.IsType<OrderRule>(procedure.Rules[0]);
        Assert.Equal(Duration.FromSeconds(60), rest.AtLeast);
        Assert.Equal([new StepId("rest")], Assert.IsType<OrderRule>(procedure.Rules[1]).First);
        var dead = Assert.IsType<StateRule>(procedure.Rules[4]);
        Assert.Equal(new Stakes(Harm.People, Severity.Critical), dead.Stakes);
        Assert.Equal([new FactSetting(new("key"), new("off"))], dead.OnlyWhile);
    }

    [Fact]
    public void A_mirror_pairs_their_step_with_mine()
    {
        var mirror = library.FindProcedure(new("refit-relay-tray"))!.Procedure.Mirror!;
        Assert.Equal(new ProcedureId("change-relay-tray"), mirror.Of);
        Assert.Contains(new MirrorPair(new("lift-tray"), new("put-in")), mirror.Pairs);
    }

    [Fact]
    public void A_translated_procedure_differs_in_its_texts_alone()
    {
        var written = library.FindProcedure(new("change-relay-tray"))!;
        var spanish = written.In("es");
        Assert.Equal("Quite el contacto", spanish.Steps[0].Do);
        Assert.Equal("Se pudren", spanish.Decoys[0].Otherwise);
        Assert.Equal("La quema", spanish.Rules[1].Otherwise);
        Assert.Equal(
            written.Procedure.Steps.Select(step => step with { Do = "" }),
            spanish.Steps.Select(step => step with { Do = "" }));
    }

    [Fact]
    public void A_scenario_says_what_was_done_and_which_decoys_are_offered()
    {
        var scenario = library.FindScenario(new("half-way"))!;
        Assert.Equal([QuestionKind.Order, QuestionKind.Finish, QuestionKind.FirstFault], scenario.Kinds);
        Assert.Equal(new VariantId("tipper"), scenario.Variant);
        Assert.Equal(["key-off", "rest"], scenario.Start.Select(entry => entry.Step.Value));
        Assert.Equal(Duration.FromSeconds(90), scenario.Start[1].Stated);
        Assert.Equal([new StepId("hose")], scenario.Show);
        Assert.Empty(library.FindScenario(new("at-the-crane"))!.Show!);
    }

    [Fact]
    public void A_translated_reading_names_its_sources_in_its_own_words()
    {
        var scenario = library.FindScenario(new("weak-relay"))!;
        Assert.Equal(new("A table", "row 2", SourceKind.Published), Assert.Single(scenario.Text.Reading!.Sources));
        Assert.Equal(
            new("Una tabla", "fila 2", SourceKind.Published) { Language = "es", WhereLanguage = "es" },
            Assert.Single(scenario.In("es").Reading!.Sources));
    }

    [Fact]
    public void A_competency_says_how_it_is_shown_and_how_long_it_holds()
    {
        var competency = library.FindCompetency(new("relay-work"))!;
        Assert.Equal([QuestionKind.Order, QuestionKind.Finish], competency.Paper.Questions.Select(draw => draw.Kind));
        Assert.Equal((1, 2), (competency.Paper.Questions[0].Count, competency.Paper.Questions[0].From.Count));
        Assert.Equal(Duration.FromSeconds(1800), competency.Paper.Time);
        Assert.Equal(80, competency.Paper.PassMark);
        Assert.Equal("P1D", competency.Paper.WaitAfterFailed.ToString());
        Assert.Equal("P30D", competency.Observed!.Within.ToString());
        Assert.Equal(24, competency.ValidFor.Months);
        Assert.Equal(6, competency.ConfirmEvery!.Value.Months);
        Assert.Equal("P60D", Assert.IsType<RevisionRule.Renew>(competency.OnNewRevision).Within.ToString());
    }

    [Fact]
    public void A_competency_is_called_by_its_name_in_the_language_wished_for()
    {
        var competency = library.FindCompetency(new("relay-work"))!;
        Assert.Equal("Trabajo con relés", competency.TitleIn("es"));
        Assert.Equal(competency.Title, competency.TitleIn("hi"));
    }

    [Fact]
    public void Words_of_the_trade_stand_in_the_order_of_the_language_and_fall_back_to_the_default_one()
    {
        Assert.Equal(["bandeja", "relé"], library.TermsIn("es").Select(term => term.Word));
        Assert.Equal(["relay", "tray"], library.TermsIn("hi").Select(term => term.Word));
        Assert.Equal("en", library.FindTerm(new("tray"), "hi")!.Language);
        Assert.Null(library.FindTerm(new("no-such-word"), "en"));
    }

    [Fact]
    public void Every_part_names_the_file_that_it_was_read_from()
    {
        var file = library.FindProcedure(new("change-relay-tray"))!.File;
        Assert.Equal(ContentFolders.File("procedures/change-relay-tray.yaml").Hash, file.Hash);
        Assert.Equal("scenarios/half-way.md", library.FindScenario(new("half-way"))!.Text.File.Path);
    }
}
