using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Training.Records.Accounts;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Results;

/// <summary>By what people are told apart when they are counted; always by one thing alone.</summary>
public enum Cut
{
    /// <summary>By nothing: everybody.</summary>
    Everybody,

    /// <summary>By the revision of the procedure: the hash of its text.</summary>
    Revision,

    /// <summary>By their shop.</summary>
    Shop,

    /// <summary>By the language in which they answered.</summary>
    Language,

    /// <summary>By the month (UTC), <c>2026-11</c>.</summary>
    Month,
}

/// <summary>
/// How many people had the chance to get each thing of a procedure wrong, and how many did, in one group of people. Each
/// person counts once for each thing and source: at the first chance that they ever had. So the groups of a cut share
/// nobody, their numbers add up to those of everybody, and the people in a number are independent of each other.
/// </summary>
internal sealed class Tally
{
    public required ProcedureId Procedure { get; init; }

    public required WorkSource Source { get; init; }

    public required Cut Cut { get; init; }

    /// <summary>Which group; empty for everybody, and for those whose group is not known.</summary>
    public required string Group { get; init; }

    /// <summary>How many had the chance, by the numbers of <see cref="TallySubject"/>.</summary>
    public List<int> People { get; init; } = [];

    /// <summary>How many of them got it wrong, by the same numbers.</summary>
    public List<int> Wrong { get; init; } = [];

    public void Count(int subject, bool isWrong)
    {
        while (People.Count <= subject)
        {
            People.Add(0);
            Wrong.Add(0);
        }

        People[subject]++;
        if (isWrong) Wrong[subject]++;
    }

    /// <summary>How many of how many got a thing wrong.</summary>
    public Share Of(int subject) => subject < People.Count ? new(Wrong[subject], People[subject]) : new(0, 0);
}

/// <summary>The number under which a thing of a procedure is counted, from 0; given once and for all revisions.</summary>
internal sealed class TallySubject
{
    public required ProcedureId Procedure { get; init; }

    public required int Number { get; init; }

    public required ChanceKind Kind { get; init; }

    public required string Subject { get; init; }

    public Chance Chance => new(Kind, Subject);
}

/// <summary>For what a person was counted already, and which wrong orders they gave.</summary>
internal sealed class FirstChances
{
    public required PersonId PersonId { get; init; }

    public required ProcedureId Procedure { get; init; }

    public required WorkSource Source { get; init; }

    public List<int> Subjects { get; init; } = [];

    public List<string> Orders { get; init; } = [];
}

/// <summary>Wrong orders that got the same things wrong, and the one of them that is mended by the fewest changes.</summary>
internal sealed class WrongOrder
{
    public required ProcedureId Procedure { get; init; }

    public required WorkSource Source { get; init; }

    /// <summary>Names what they got wrong: the beginning of a hash of it.</summary>
    public required string Code { get; init; }

    /// <summary>What they got wrong, by the numbers of <see cref="TallySubject"/>.</summary>
    public required List<int> Subjects { get; init; }

    /// <summary>How many different people gave one.</summary>
    public int People { get; set; }

    /// <summary>How many changes the example's mend makes.</summary>
    public required int Cost { get; set; }

    public required Guid ExampleId { get; set; }

    public required int ExampleNumber { get; set; }
}

internal sealed class TallyTables : IEntityTypeConfiguration<Tally>, IEntityTypeConfiguration<TallySubject>,
    IEntityTypeConfiguration<FirstChances>, IEntityTypeConfiguration<WrongOrder>
{
    private const int LongestId = 100;

    public void Configure(EntityTypeBuilder<Tally> builder)
    {
        builder.ToTable("Tallies");
        // Everybody of all procedures, one group of all of them, all groups of one of them: each is a range of this key.
        builder.HasKey(tally => new { tally.Source, tally.Cut, tally.Procedure, tally.Group });
        builder.Property(tally => tally.Group).HasMaxLength(LongestId);
    }

    public void Configure(EntityTypeBuilder<TallySubject> builder)
    {
        builder.ToTable("TallySubjects");
        builder.HasKey(subject => new { subject.Procedure, subject.Number });
        builder.HasIndex(subject => new { subject.Procedure, subject.Kind, subject.Subject }).IsUnique();
        builder.Property(subject => subject.Subject).HasMaxLength(LongestId);
        builder.Ignore(subject => subject.Chance);
    }

    public void Configure(EntityTypeBuilder<FirstChances> builder)
    {
        builder.ToTable("FirstChances");
        builder.HasKey(first => new { first.PersonId, first.Procedure, first.Source });
        builder.HasOne<Person>().WithMany().HasForeignKey(first => first.PersonId);
    }

    public void Configure(EntityTypeBuilder<WrongOrder> builder)
    {
        builder.ToTable("WrongOrders");
        builder.HasKey(order => new { order.Procedure, order.Source, order.Code });
        builder.HasIndex(order => new { order.Procedure, order.Source, order.People });
        builder.Property(order => order.Code).HasMaxLength(LongestId);
    }
}
