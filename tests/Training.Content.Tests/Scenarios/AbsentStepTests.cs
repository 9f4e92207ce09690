using System.Text;
using Training.Content.Measuring;
using Training.Content.Qti;
using Training.Content.Scenarios;
using Training.Content.Tests.Shipped;
using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Content.Tests.Scenarios;

/// <summary>A step that cannot be done in a scenario.</summary>
public sealed class AbsentStepTests
{
    private static readonly StepId Hook = new("hook");
    private static readonly ContentFile English = new("scenarios/no-hook.md", """
        ---
        title: The hook is bent
        procedure: change-relay-tray
        variant: crane
        kinds: [order, what-if, next]
        show: []
        absent:
          - { id: hook, because: It is bent, otherwise: The tray falls }
        ---
        The hook of the crane is bent. The bench is free.
        """);

    private static readonly ContentFile Spanish = new("scenarios/no-hook.es.md", """
        ---
        title: El gancho está doblado
        absent:
          - { id: hook, because: Está doblado, otherwise: La bandeja se cae }
        ---
        El gancho de la grúa está doblado. El banco está libre.
        """);

    private static readonly ContentLibrary Library = Read(English, Spanish).Library!;
    private static readonly Scenario NoHook = Library.FindScenario(new("no-hook"))!;

    public static TheoryData<string> WithAbsentSteps =>
        [.. ShippedContent.Library.Scenarios.Where(scenario => scenario.Absent.Count > 0).Select(scenario => scenario.Id.Value)];

    [Fact]
    public void A_folder_in_which_something_is_absent_is_sound() => Assert.Empty(Read(English, Spanish).Problems);

    [Fact]
    public void It_is_a_decoy_of_the_job_whose_name_is_the_procedures_and_whose_reasons_are_the_scenarios()
    {
        var job = Library.JobOf(NoHook)!;
        Assert.DoesNotContain(job.Procedure.Steps, step => step.Id == Hook);
        Assert.Equal(("Hang the tray on the hook", "It is bent", "The tray falls"), TextsOf(job.Procedure));
        Assert.Equal(("Cuelgue la bandeja del gancho", "Está doblado", "La bandeja se cae"), TextsOf(job.In("es")));
        Assert.Equal(Library.FindProcedure(new("change-relay-tray"))!.File, job.File);
    }

    [Fact]
    public void Its_texts_in_a_language_that_the_scenario_lacks_are_those_of_the_default_language() => Assert.Equal(
        ("Cuelgue la bandeja del gancho", "It is bent", "The tray falls"), TextsOf(Read(English).Library!.JobOf(Read(English).Library!.FindScenario(new("no-hook"))!)!.In("es")));

    [Fact]
    public void It_is_offered_although_the_scenario_shows_no_decoys() =>
        Assert.Equal([Hook], NoHook.DecoysOf(Library.JobOf(NoHook)!.Procedure));

    [Fact]
    public void A_scenario_with_nothing_absent_has_the_procedure_itself_as_its_job() => Assert.Same(
        Library.FindProcedure(new("change-relay-tray")), Library.JobOf(Library.FindScenario(new("half-way"))!));

    [Fact]
    public void What_may_be_done_next_is_never_the_absent_step()
    {
        var orders = RightOrderDraw.Of(Grader.For(Library.JobOf(NoHook)!.Procedure, NoHook.Variant).Value);
        var offered = 0;
        for (var seed = 1; seed <= 200; seed++)
        {
            var question = NoHook.Draw(QuestionKind.Next.AsChoice()!.Value, orders, new SeededDraw(seed)).Value;
            foreach (var option in question.Prompt.Options.Where(option => option.Step == Hook))
            {
                offered++;
                Assert.DoesNotContain(option.Id, question.Right);
            }
        }

        Assert.NotEqual(0, offered);
    }

    [Fact]
    public void The_item_that_goes_out_does_not_name_it()
    {
        var item = Encoding.UTF8.GetString(QtiOrderItem.Write(NoHook, Library.FindProcedure(new("change-relay-tray"))!, "en"));
        Assert.DoesNotContain("\"hook\"", item, StringComparison.Ordinal);
        Assert.Contains("\"bench\"", item, StringComparison.Ordinal);
    }

    [Fact]
    public void A_translation_without_its_texts_is_out_of_step()
    {
        var bare = Spanish with { Text = Spanish.Text.Replace("absent:\n  - { id: hook, because: Está doblado, otherwise: La bandeja se cae }\n", "", StringComparison.Ordinal) };
        ContentFile[] files = [.. ContentFolders.Good, English, bare];
        Assert.Contains(bare.Path, LanguageGaps.Of(files, ContentReader.Read(files).Problems, "es").OutOfStep);
        Assert.DoesNotContain(bare.Path, LanguageGaps.Of(files, Read(English, Spanish).Problems, "es").OutOfStep);
    }

    [Fact]
    public void Some_of_what_is_taught_has_absent_steps() => Assert.True(WithAbsentSteps.Count >= 8);

    /// <summary>Whoever does it the way that cannot be done is told so, and whoever does it the other way is right.</summary>
    [Theory]
    [MemberData(nameof(WithAbsentSteps))]
    public void What_is_taught_is_right_without_the_absent_step_and_wrong_with_it(string id)
    {
        var library = ShippedContent.Library;
        var scenario = library.FindScenario(new(id))!;
        var grader = Grader.For(library.JobOf(scenario)!.Procedure, scenario.Variant).Value;
        var whole = Grader.For(library.FindProcedure(scenario.Procedure!.Value)!.Procedure, scenario.Variant).Value;
        var right = grader.Grade(new Answer([])).Value.Nearest;
        Assert.True(grader.Grade(new Answer(right)).Value.Accepted);
        Assert.True(whole.Grade(new Answer(right)).Value.Accepted);
        foreach (var absent in scenario.Absent)
        {
            var before = whole.Grade(new Answer([new Entry(absent.Id)])).Value.Nearest;
            Assert.True(whole.Grade(new Answer(before)).Value.Accepted);
            var verdict = grader.Grade(new Answer(before)).Value;
            Assert.Contains(verdict.Findings, finding => finding.Kind == FindingKind.Decoy && finding.Subject == absent.Id.Value);
            Assert.DoesNotContain(verdict.Nearest, entry => entry.Step == absent.Id);
        }
    }

    private static ContentReading Read(params ContentFile[] more) => ContentReader.Read([.. ContentFolders.Good, .. more]);

    private static (string, string?, string?) TextsOf(Procedure job)
    {
        var decoy = job.Decoys.Single(known => known.Id == Hook);
        return (decoy.Do, decoy.Because, decoy.Otherwise);
    }
}
