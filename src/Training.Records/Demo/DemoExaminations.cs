using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Records.Examining;
using Training.Records.Observing;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Sequencing.Answers;
using Training.Sequencing.Json;
using static Training.Records.Demo.DemoHistory;

namespace Training.Records.Demo;

/// <summary>Examinations in the demo's world that go well.</summary>
internal sealed class DemoExaminations(IServiceProvider services, DemoClock clock, Actor sittingExaminer, Actor runExaminer)
{
    private readonly Library library = services.GetRequiredService<Library>();
    private readonly RightWork rightWork = new(services.GetRequiredService<Graders>());

    public async Task Practise(Actor technician, ScenarioId scenario, QuestionKind kind)
    {
        var practice = services.GetRequiredService<Practice>();
        var asked = Done(await practice.Draw(technician, scenario, kind));
        clock.At += NodaTime.Duration.FromMinutes(4);
        Done(await practice.HandIn(technician, new(Guid.NewGuid(), asked.Ticket, await RightAnswer(asked.Question))));
    }

    public async Task PassPaper(Actor technician, CompetencyId competency)
    {
        var sittings = services.GetRequiredService<Sittings>();
        var papers = services.GetRequiredService<Papers>();
        var sitting = Done(await sittings.Open(sittingExaminer, competency, "Eastvale, room 3"));
        var paper = Done(await sittings.Admit(sittingExaminer, sitting, technician.Person));
        foreach (var question in Done(await papers.Begin(technician, paper)).Questions)
        {
            clock.At += NodaTime.Duration.FromMinutes(3);
            Done(await papers.Save(technician, paper, question.Number, await RightAnswer(question.Question), 1));
        }

        Done(await papers.HandIn(technician, paper));
        Done(await sittings.Close(sittingExaminer, sitting));
    }

    public async Task PassRuns(Actor technician, Competency competency)
    {
        var runs = services.GetRequiredService<Runs>();
        foreach (var procedure in competency.Observed?.Procedures ?? [])
        {
            clock.At += NodaTime.Duration.FromMinutes(10);
            var written = library.Current.Content.FindProcedure(procedure)!;
            var variants = written.Procedure.Variants;
            var run = Done(await runs.Start(runExaminer, new(
                technician.Person, competency.Id, procedure, variants.Count > 0 ? variants[^1] : null, "K26 in bay 4")));
            var started = clock.At;
            var (_, verdict) = await rightWork.Of(written, variants.Count > 0 ? variants[^1] : null, []);
            foreach (var step in verdict.Replay)
            {
                // Some seconds a step go by between the one and the next; gaps only grow by that.
                var seconds = step.EndsAt.Seconds + (3 * step.Place);
                clock.At = started + NodaTime.Duration.FromTicks((double)(seconds * NodaConstants.TicksPerSecond));
                Done(await runs.Tap(runExaminer, run, new(Guid.NewGuid(), step.Step, seconds)));
            }

            Done(await runs.End(runExaminer, run));
            Done(await runs.Sign(runExaminer, run, "Calm, in order."));
        }
    }

    private async Task<string> RightAnswer(QuestionView question)
    {
        var scenario = library.Current.Content.FindScenario(question.Scenario)!;
        var written = library.Current.Content.FindProcedure(scenario.Procedure)!;
        var (entries, _) = await rightWork.Of(written, question.Variant, question.Kind == QuestionKind.Finish ? scenario.Start : []);
        return AnswerJson.Write(new Answer(entries));
    }
}
