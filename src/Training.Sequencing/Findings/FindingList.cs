using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>The findings of one answer, each with the place of the entry that caused it.</summary>
internal sealed class FindingList
{
    private readonly List<Finding> findings = [];
    private readonly List<int> causes = [];

    public IReadOnlyList<Finding> All => findings.Count == 0 ? [] : findings;

    public int Count => findings.Count;

    public bool IsSafe { get; private set; } = true;

    public int TooSoonCount { get; private set; }

    /// <summary>Adds a finding.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="cause">The place, from 0, of the entry that caused it; negative or nowhere for none.</param>
    public void Add(Finding finding, int cause)
    {
        findings.Add(finding);
        causes.Add(cause);
        IsSafe &= finding.Stakes.IsSafe;
        if (finding.Kind == FindingKind.TooSoon) TooSoonCount++;
    }

    /// <summary>The findings that an entry caused, by their place in the list.</summary>
    public IReadOnlyList<int> CausedBy(int place)
    {
        List<int>? caused = null;
        for (var f = 0; f < causes.Count; f++)
            if (causes[f] == place) (caused ??= []).Add(f);
        return caused is null ? [] : caused;
    }

    /// <summary>Whether any finding is about a step.</summary>
    public bool Names(StepId step)
    {
        foreach (var finding in findings)
            foreach (var named in finding.Steps)
                if (named == step) return true;
        return false;
    }
}
