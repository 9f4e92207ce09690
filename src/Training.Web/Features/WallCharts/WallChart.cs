using Training.Content.Procedures;
using Training.Sequencing.Procedures;
using Training.Web.Drawings;

namespace Training.Web.Features.WallCharts;

/// <summary>The order of a procedure on one kind of vehicle as a sheet of A4 that hangs on the wall. All of it comes from the procedure's file.</summary>
/// <param name="Written">The procedure as it is published.</param>
/// <param name="Procedure">The procedure with its texts in the language that the chart is in.</param>
/// <param name="Language">That language.</param>
/// <param name="Variant">The kind of vehicle; null where the procedure tells none apart.</param>
public sealed record WallChart(WrittenProcedure Written, Procedure Procedure, string Language, VariantId? Variant)
{
    // What is printed on the right-hand side at the largest letters fills its column at about so many letters.
    private const int FewLetters = 900;

    /// <summary>The plan, its steps numbered.</summary>
    public LinePlanPicture Plan { get; } = LinePlanOfProcedure.Of(Procedure, Variant);

    /// <summary>The first eight digits of the hash that answers and records name the text by.</summary>
    public string ShortHash => Written.File.Hash.Hex[..8];

    /// <summary>The plan as SVG.</summary>
    /// <param name="after">The word that stands before the steps that a step waits for.</param>
    public string Drawing(string after) =>
        LinePlanDrawing.Draw(Plan, new(Procedure.Title, after), "chart", LinePlanLook.Paper);

    /// <summary>What can hurt somebody, or be lost for good, when the order is not kept; the gravest first.</summary>
    public IReadOnlyList<ChartCaution> Cautions
    {
        get
        {
            var order = LinePlanOfProcedure.StepsOf(Procedure, Variant);
            return [.. Procedure.Rules
                .Where(rule => rule.Otherwise is not null && (rule.Stakes.Harm == Harm.People || rule.Stakes.Severity == Severity.Critical))
                .Select(rule => new ChartCaution(SignalWords.Of(rule.Stakes), Numbers(rule is OrderRule one ? one.First : []), Numbers(Later(rule)), rule.Otherwise!))
                .Where(caution => caution.Later.Count > 0)
                .OrderBy(caution => caution.Word)
                .ThenBy(caution => caution.Later[0])];

            IReadOnlyList<int> Numbers(IReadOnlyList<StepId> steps) => [.. steps
                .SelectMany(id => order.Index().Where(place => place.Item.Contains(id))).Select(place => place.Index + 1).Distinct().Order()];
        }
    }

    /// <summary>What must never be done, the gravest first.</summary>
    public IReadOnlyList<Decoy> Never => [.. Procedure.Decoys.OrderBy(decoy => SignalWords.Of(decoy.Stakes))];

    /// <summary>How small the letters must be for all of it to stand on one sheet: from 1, the largest, to 4.</summary>
    public int Size
    {
        get
        {
            var letters = Cautions.Sum(caution => caution.Otherwise.Length + 30) + Never.Sum(decoy => decoy.Do.Length + (decoy.Because?.Length ?? 0) + 10);
            return letters switch { < FewLetters => 1, < FewLetters * 3 / 2 => 2, < FewLetters * 5 / 2 => 3, _ => 4 };
        }
    }

    private static IReadOnlyList<StepId> Later(Rule rule) => rule switch
    {
        OrderRule order => order.Then,
        StateRule state => [state.Step],
        _ => [],
    };
}

/// <summary>A caution on a wall chart.</summary>
/// <param name="Word">Its signal word.</param>
/// <param name="Earlier">The numbers of the steps that come before; none where the vehicle's state is what matters.</param>
/// <param name="Later">The numbers of the steps that must wait.</param>
/// <param name="Otherwise">What happens otherwise.</param>
public sealed record ChartCaution(SignalWord Word, IReadOnlyList<int> Earlier, IReadOnlyList<int> Later, string Otherwise);
