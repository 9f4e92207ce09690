using Training.Content;
using Training.Records.Writing;
using Training.Web.Features.Shared;

namespace Training.Web.Features.Drafts;

/// <summary>A draft as it is written on.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Check">What is to be said of it.</param>
/// <param name="Beside">Texts that were kept beside it.</param>
public sealed record DraftPage(DraftView Draft, DraftCheckView Check, IReadOnlyList<DraftTextView> Beside)
{
    /// <summary>The procedure in sentences; null where the draft is none, or no YAML.</summary>
    public ProcedureFormView? Form { get; } = ProcedureFormView.Of(Draft.Line.Path, Draft.Text, $"/desk/drafts/{Draft.Line.Id}/form");

    /// <summary>What a translation translates, as it lies on the desk or else is published; null where the draft is no translation.</summary>
    public ContentFile? English { get; init; }

    /// <summary>The most lines that are numbered: beyond, the browser would have more to do with the numbers than with the text.</summary>
    public const int MostNumbered = 20_000;

    /// <summary>How many lines the text has.</summary>
    public int Lines { get; } = Draft.Text.AsSpan().Count('\n') + 1;

    /// <summary>The lines at which something is wrong, and whether it keeps the draft back.</summary>
    public IReadOnlyDictionary<int, bool> Marks { get; } = Check.Report.Problems.GroupBy(problem => problem.Line)
        .ToDictionary(line => line.Key, line => line.Any(problem => problem.HoldsBack));
}
