using Training.Content.Rendering;
using Training.Content.Tests.Shipped;
using Training.Sequencing.Procedures;

namespace Training.Content.Tests.Rendering;

/// <summary>From a rule to the section of the lesson that teaches it.</summary>
public sealed class TeachingSectionTests
{
    private const string Job = """
        id: job
        title: Job
        revision: 1
        steps:
          - { id: open, do: Open the isolator switch }
          - { id: wash, do: Wash the frame rails }
          - { id: dry, do: Dry everything with air }
        """;

    private const string Lesson = """
        ---
        title: Work
        minutes: 5
        procedures: [job]
        ---
        Before any heading: open the isolator switch.

        ## First

        Water and washed frame rails.

        ## Second

        The isolator switch is opened before you wash the rails of the frame.

        ::: check 1
        Which one?

        - Dry everything with air.
          - Yes.
        - Wash.
          - No.
        :::

        ## Third

        ::: line-plan job
        :::
        """;

    [Fact]
    public void The_section_that_names_both_sides_of_the_rule_teaches_it() => Assert.Equal("second", Of(Lesson, ["open"], ["wash"]));

    [Fact]
    public void The_first_that_names_the_most_wins() => Assert.Equal("first", Of(Lesson, ["wash"]));

    [Fact]
    public void Where_none_names_it_the_plan_of_the_job_does() => Assert.Equal("third", Of(Lesson, ["open"], ["dry"]));

    [Fact]
    public void A_lesson_that_holds_neither_teaches_it_nowhere() =>
        Assert.Null(Of(Lesson.Replace("line-plan job", "notice", StringComparison.Ordinal), ["open"], ["dry"]));

    [Fact]
    public void Every_rule_that_is_shipped_leads_into_a_lesson()
    {
        var library = ShippedContent.Library;
        var renderer = new LessonRenderer(library, new PlainDrawings());
        var (found, nowhere) = (0, new List<string>());
        foreach (var module in library.Modules)
            foreach (var procedure in module.Procedures.Select(id => library.FindProcedure(id)!.Procedure))
                foreach (var rule in procedure.Rules)
                {
                    IReadOnlyList<IReadOnlyList<StepId>> sides = rule is OrderRule order ? [order.First, order.Then] : [[((StateRule)rule).Step]];
                    if (renderer.Teaching(module, procedure, sides, "es") is null) nowhere.Add($"{procedure.Id} {rule.Id}");
                    else found++;
                }

        Assert.True(found > 150, $"Only {found} rules lead into a lesson.");
        Assert.Empty(nowhere);
    }

    private static string? Of(string lesson, params string[][] sides)
    {
        var library = ContentReader.Read([new("modules/01-work/lesson.md", lesson), new("procedures/job.yaml", Job)]).Library!;
        return new LessonRenderer(library, new PlainDrawings()).Teaching(
            library.Modules[0], library.Procedures[0].Procedure, [.. sides.Select(side => side.Select(id => new StepId(id)).ToList())], "en")?.Id;
    }
}
