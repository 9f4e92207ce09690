using NodaTime;
using Training.Content;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Results;

/// <summary>Where an order of work was given.</summary>
public enum WorkSource
{
    /// <summary>In practice, as often as wanted.</summary>
    Practice,

    /// <summary>On a paper.</summary>
    Paper,

    /// <summary>At a vehicle, watched by an examiner.</summary>
    Vehicle,
}

/// <summary>An order of work that was graded, as far as results are counted by it.</summary>
internal sealed record GradedWork
{
    private string? orderCode;

    public required WorkSource Source { get; init; }

    public required PersonId Person { get; init; }

    /// <summary>The person's shop; null for staff of the provider.</summary>
    public required ShopId? Shop { get; init; }

    /// <summary>The language in which it was answered; null where that was not noted.</summary>
    public required string? Language { get; init; }

    public required ProcedureId Procedure { get; init; }

    /// <summary>The revision that it was judged by.</summary>
    public required ContentHash ProcedureHash { get; init; }

    public required Instant At { get; init; }

    /// <summary>
    /// Whether there is not a single entry. It is not counted then: whoever wrote nothing down, perhaps for lack of time, has
    /// not shown what they would do.
    /// </summary>
    public required bool IsEmpty { get; init; }

    /// <summary>What could be got wrong.</summary>
    public required IReadOnlySet<Chance> Chances { get; init; }

    /// <summary>What was got wrong.</summary>
    public required IReadOnlySet<Chance> Broken { get; init; }

    /// <summary>Names what was got wrong.</summary>
    public string OrderCode => orderCode ??= TallySheets.CodeOf(Broken);

    /// <summary>How many changes the least mend makes.</summary>
    public required int Cost { get; init; }

    /// <summary>Where it is kept.</summary>
    public required WorkPlace Place { get; init; }
}

/// <summary>Where a graded order is kept: a practice try, a question of a paper, a run.</summary>
/// <param name="Id">The id of the try, paper or run.</param>
/// <param name="Number">The question's number in a paper; 0 elsewhere.</param>
internal readonly record struct WorkPlace(Guid Id, int Number);
