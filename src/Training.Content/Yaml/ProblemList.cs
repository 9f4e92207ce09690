namespace Training.Content.Yaml;

/// <summary>Gathers the problems of one file.</summary>
internal sealed class ProblemList(string file)
{
    private readonly List<ContentProblem> problems = [];

    public string File => file;

    public IReadOnlyList<ContentProblem> All => problems;

    public IReadOnlyList<ContentProblem> Sorted => [.. problems.OrderBy(problem => problem.Line).ThenBy(problem => problem.Column)];

    public bool HasErrors => problems.Exists(problem => problem.HoldsBack);

    public void Error(Place place, string sentence) => Add(place, ProblemLevel.Error, sentence);

    /// <summary>Reports what publishing refuses and reading does not: every demand that was made after something had been published.</summary>
    public void Hold(Place place, string sentence) => Add(place, ProblemLevel.Held, sentence);

    public void Remark(Place place, string sentence) => Add(place, ProblemLevel.Remark, sentence);

    private void Add(Place place, ProblemLevel level, string sentence)
    {
        // A file of nothing but faults would otherwise drown its author; the first thousand are work enough.
        if (problems.Count < 1000) problems.Add(new(file, place.Line, place.Column, level, sentence));
    }
}
