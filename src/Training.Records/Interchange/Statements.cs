using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Records.Examining;
using Training.Records.Issuers;
using Training.Records.Observing;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Drawing;
using Training.Sequencing.Json;

namespace Training.Records.Interchange;

/// <summary>
/// Attempts as statements for other programs: practice, papers with their answers, observed runs. Read row by row, so that
/// however many there are no more than one is held.
/// </summary>
public sealed class Statements
{
    /// <summary>Up to how many right orders are listed with a question; the standard advises against the list where they are many.</summary>
    public const int MostOrdersListed = 8;

    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly Archive archive;
    private readonly Graders graders;
    private readonly IssuerPlace place;

    internal Statements(TrainingDbContext db, Library library, Archive archive, Graders graders, IssuerPlace place) =>
        (this.db, this.library, this.archive, this.graders, this.place) = (db, library, archive, graders, place);

    /// <summary>The statements of what ended in a time (administrators and trainers).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="shop">One shop alone; null for all.</param>
    /// <param name="from">The first instant.</param>
    /// <param name="until">The instant after the last.</param>
    public async Task<Outcome<WrittenStatements, Refusal>> Of(Actor actor, ShopId? shop, Instant from, Instant until)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Administrator) && !actor.Is(Roles.Trainer)) return Refused.NotAllowed;
        if (shop is { } one && (!actor.Reaches(one) || !await db.Shops.AnyAsync(known => known.Id == one))) return Refused.NotFound;
        var address = place.Address();
        if (!address.IsOk) return address.Fault;
        return new WrittenStatements(All(new(address.Value.Base), shop, from, until));
    }

    private async IAsyncEnumerable<JsonObject> All(StatementJson json, ShopId? shop, Instant from, Instant until)
    {
        var tries = db.PracticeTries.AsNoTracking().Where(attempt => attempt.At >= from && attempt.At < until);
        if (shop is not null) tries = tries.Where(attempt => db.Users.Any(person => person.Id == attempt.PersonId && person.ShopId == shop));
        await foreach (var attempt in tries.OrderBy(attempt => attempt.At).AsAsyncEnumerable()) yield return await Of(json, attempt);

        var papers = db.Papers.AsNoTracking().Include(paper => paper.Questions).Where(paper => paper.HandedInAt >= from && paper.HandedInAt < until);
        if (shop is not null) papers = papers.Where(paper => paper.ShopId == shop);
        await foreach (var paper in papers.OrderBy(paper => paper.HandedInAt).AsAsyncEnumerable())
        {
            foreach (var question in paper.Questions.OrderBy(question => question.Number)) yield return await Of(json, paper, question);
            yield return await Of(json, paper);
        }

        var runs = db.Runs.AsNoTracking().Include(run => run.Taps).Where(run => run.SignedAt >= from && run.SignedAt < until);
        if (shop is not null) runs = runs.Where(run => run.ShopId == shop);
        await foreach (var run in runs.OrderBy(run => run.SignedAt).AsAsyncEnumerable()) yield return await Of(json, run);
    }

    private async Task<JsonObject> Of(StatementJson json, PracticeTry attempt)
    {
        var content = (await archive.Of(attempt.PublicationNumber)).Content;
        var activity = await Question(json, content, attempt.Scenario, attempt.Kind);
        var statement = json.Statement(
            attempt.Id.Value, attempt.PersonId, "answered", activity,
            StatementJson.Result(attempt.Score, attempt.Accepted, Response(attempt.Kind, attempt.AnswerJson)), attempt.At);
        if (attempt.Language is { } language) statement["context"] = new JsonObject { ["language"] = language };
        return statement;
    }

    private async Task<JsonObject> Of(StatementJson json, Paper paper, PaperQuestion question)
    {
        var content = (await archive.Holding(question.ScenarioHash)).Content;
        var statement = json.Statement(
            StatementJson.PartOf(paper.Id.Value, question.Number), paper.PersonId, "answered",
            // What was examined is examined again: what is right is not listed, whatever is served by now.
            json.Interaction(PathOf(question.Scenario, question.Kind), TitleOf(content, question.Scenario), InteractionOf(question.Kind), []),
            StatementJson.Result(question.Score, question.Score == 100, question.AnswerJson is { } answer ? Response(question.Kind, answer) : ""),
            question.AnswerSavedAt ?? paper.HandedInAt!.Value);
        statement["context"] = new JsonObject
        {
            ["contextActivities"] = new JsonObject { ["parent"] = new JsonArray(json.Activity($"competencies/{paper.Competency}/paper", "assessment", TitleOf(paper))) },
        };
        return statement;
    }

    private Task<JsonObject> Of(StatementJson json, Paper paper) => Task.FromResult(json.Statement(
        paper.Id.Value, paper.PersonId, paper.Passed == true ? "passed" : "failed",
        json.Activity($"competencies/{paper.Competency}/paper", "assessment", TitleOf(paper)),
        StatementJson.Result(paper.Score, paper.Passed == true, took: paper.HandedInAt - paper.BegunAt), paper.HandedInAt!.Value));

    private async Task<JsonObject> Of(StatementJson json, Run run)
    {
        var statement = json.Statement(
            run.Id.Value, run.TechnicianId, run.Accepted == true ? "passed" : "failed",
            json.Interaction($"procedures/{run.Procedure}", (await archive.Procedure(run.ProcedureHash)).Title, "sequencing", []),
            StatementJson.Result(null, run.Accepted == true, StatementJson.Joined(run.LiveTaps.Select(tap => tap.Step.Value)), run.EndedAt - run.StartedAt),
            run.SignedAt!.Value);
        statement["context"] = new JsonObject { ["instructor"] = json.Agent(run.ExaminerId) };
        return statement;
    }

    private async Task<JsonObject> Question(StatementJson json, ContentLibrary content, ScenarioId scenario, QuestionKind kind)
    {
        List<string> right = [];
        if (kind == QuestionKind.Order && !IsExamined(scenario) && content.FindScenario(scenario) is { } known && content.JobOf(known) is { } job)
            right = Listed(await graders.OrdersFor(job.File.Hash, known.Variant, known.Absent));
        return json.Interaction(PathOf(scenario, kind), TitleOf(content, scenario), InteractionOf(kind), right);
    }

    /// <summary>Whether a paper that can be sat now may ask about a scenario, in whichever way.</summary>
    private bool IsExamined(ScenarioId scenario) =>
        library.Current.Content.Competencies.Any(competency => competency.Paper.Questions.Any(draw => draw.From.Contains(scenario)));

    /// <summary>All right orders where they are few; none otherwise.</summary>
    internal static List<string> Listed(RightOrderDraw orders)
    {
        if (!orders.Accepted.IsExact || orders.Accepted.Count > MostOrdersListed) return [];
        var found = new SortedSet<string>(StringComparer.Ordinal);
        // Each is drawn as likely as the others: of 8 one is still missing after 400 drawings once in 10²² times.
        var lots = new SeededDraw(1);
        for (var drawing = 0; drawing < 400 && found.Count < orders.Accepted.Count; drawing++)
            found.Add(StatementJson.Joined(orders.Draw(lots).Select(entry => entry.Step.Value)));
        return [.. found];
    }

    private static string Response(QuestionKind kind, string answerJson) => kind switch
    {
        QuestionKind.Order or QuestionKind.Finish => StatementJson.Joined(AnswerJson.Parse(answerJson).Value.Entries.Select(entry => entry.Step.Value)),
        QuestionKind.Reading => answerJson,
        _ => ChosenOptions.Parse(answerJson) is { IsOk: true } chosen ? StatementJson.Joined(chosen.Value) : answerJson,
    };

    private static string InteractionOf(QuestionKind kind) => kind switch
    {
        QuestionKind.Order or QuestionKind.Finish => "sequencing",
        QuestionKind.Reading => "other",
        _ => "choice",
    };

    private static string PathOf(ScenarioId scenario, QuestionKind kind) => $"scenarios/{scenario}/{kind switch
    {
        QuestionKind.FirstFault => "first-fault",
        QuestionKind.WhatIf => "what-if",
        _ => kind.ToString().ToLowerInvariant(),
    }}";

    private static string TitleOf(ContentLibrary content, ScenarioId scenario) => content.FindScenario(scenario)?.Title ?? scenario.Value;

    private string TitleOf(Paper paper) => library.Current.Content.FindCompetency(paper.Competency)?.Title ?? paper.Competency.Value;
}

/// <summary>Statements, made as they are read.</summary>
/// <param name="All">The statements: practice, papers with their questions before them, runs; each by time.</param>
public sealed record WrittenStatements(IAsyncEnumerable<JsonObject> All);
