using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Training.Content;
using Training.Content.Competencies;
using Training.Content.Scenarios;

namespace Training.Records.Results;

/// <summary>
/// What the papers of one text of a competency add up to: all that the figures of <see cref="PaperFigures"/> need. Each
/// person counts once, by the first paper for the competency, so that the papers are those of different people.
/// </summary>
internal sealed class PaperSum
{
    public required ContentHash CompetencyHash { get; init; }

    public required CompetencyId Competency { get; init; }

    public int Papers { get; set; }

    public int Passed { get; set; }

    /// <summary>The sum of the numbers of right answers, and of their squares.</summary>
    public long Total { get; set; }

    public long TotalSquares { get; set; }

    /// <summary>For each place of the paper how many answered rightly there.</summary>
    public List<int> RightAtPlace { get; init; } = [];

    public void Add(IReadOnlyList<bool> rights, bool isPassed)
    {
        var total = rights.Count(right => right);
        Papers++;
        if (isPassed) Passed++;
        Total += total;
        TotalSquares += total * total;
        while (RightAtPlace.Count < rights.Count) RightAtPlace.Add(0);
        foreach (var (place, right) in rights.Index())
            if (right) RightAtPlace[place]++;
    }
}

/// <summary>What the answers to one question (a scenario asked in one way) add up to, in the papers of one text of a competency.</summary>
internal sealed class ItemSum
{
    public required ContentHash CompetencyHash { get; init; }

    public required QuestionKind Kind { get; init; }

    public required ScenarioId Scenario { get; init; }

    public int Asked { get; set; }

    public int Right { get; set; }

    /// <summary>The sum of the right answers to the other questions of the papers, of their squares, and of those of the papers that were right here.</summary>
    public long Rest { get; set; }

    public long RestSquares { get; set; }

    public long RestWhereRight { get; set; }

    public void Add(bool isRight, int rest)
    {
        Asked++;
        if (isRight) Right++;
        Rest += rest;
        RestSquares += rest * rest;
        if (isRight) RestWhereRight += rest;
    }
}

internal sealed class PaperSumTables : IEntityTypeConfiguration<PaperSum>, IEntityTypeConfiguration<ItemSum>
{
    public void Configure(EntityTypeBuilder<PaperSum> builder)
    {
        builder.ToTable("PaperSums");
        builder.HasKey(sum => sum.CompetencyHash);
        builder.HasIndex(sum => sum.Competency);
    }

    public void Configure(EntityTypeBuilder<ItemSum> builder)
    {
        builder.ToTable("ItemSums");
        builder.HasKey(sum => new { sum.CompetencyHash, sum.Kind, sum.Scenario });
    }
}
