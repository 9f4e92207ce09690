using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>The findings of one answer, each with the place of the entry that caused it.</summary>
internal sealed class FindingList
{
    private const int UsualCount = 8;
    private const int ManyCount = 32;
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
        if (findings.Count is 0 or UsualCount)
        {
            // One wrong step breaks several rules as often as one: to grow step by step would cost more than it saves.
            findings.EnsureCapacity(findings.Count == 0 ? UsualCount : ManyCount);
            causes.EnsureCapacity(findings.Count == 0 ? UsualCount : ManyCount);
        }

        findings.Add(finding);
        causes.Add(cause);
        IsSafe &= finding.Stakes.IsSafe;
        if (finding.Kind == FindingKind.TooSoon) TooSoonCount++;
    }

    /// <summary>For every place of an answer the findings that its entry caused, by their place in the list.</summary>
    public int[][] ByCause(int placeCount)
    {
        var counts = new int[placeCount];
        foreach (var cause in causes)
            if (cause >= 0 && cause < placeCount) counts[cause]++;
        var caused = new int[placeCount][];
        for (var place = 0; place < placeCount; place++) caused[place] = counts[place] == 0 ? [] : new int[counts[place]];
        for (var f = causes.Count - 1; f >= 0; f--)
            if (causes[f] is var cause && cause >= 0 && cause < placeCount) caused[cause][--counts[cause]] = f;
        return caused;
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
