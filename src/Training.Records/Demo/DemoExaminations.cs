using Microsoft.EntityFrameworkCore;
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
using Training.Records.Storage;
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
        var question = Done(await services.GetRequiredService<Questions>().Draw(library.Current, scenario, kind, new(asked.Ticket.Seed)));
        Done(await practice.HandIn(technician, new(Guid.NewGuid(), asked.Ticket, question.RightAnswer())));
    }

    public async Task PassPaper(Actor technician, CompetencyId competency)
    {
        var sittings = services.GetRequiredService<Sittings>();
        var papers = services.GetRequiredService<Papers>();
        var sitting = Done(await sittings.Open(sittingExaminer, competency, "Eastvale, room 3"));
        var paper = Done(await sittings.Admit(sittingExaminer, sitting, technician.Person));
        var open = Done(await papers.Begin(technician, paper));
        // Three quarters of the time, whatever the blueprint gives.
        var each = open.Left / open.Questions.Count * 0.75;
        foreach (var question in await Asked(paper))
        {
            clock.At += each;
            Done(await papers.Save(technician, paper, question.Number, question.Asked.RightAnswer(), 1));
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

    /// <summary>The questions of a paper with what is right.</summary>
    private async Task<IReadOnlyList<(int Number, Question Asked)>> Asked(PaperId id)
    {
        var db = services.GetRequiredService<TrainingDbContext>();
        var draw = services.GetRequiredService<PaperDraw>();
        var paper = await db.Papers.AsNoTracking().Include(known => known.Questions).SingleAsync(known => known.Id == id);
        var asked = new List<(int, Question)>();
        foreach (var kept in paper.Questions) asked.Add((kept.Number, await draw.Again(library.Current, paper, kept)));
        return asked;
    }
}
