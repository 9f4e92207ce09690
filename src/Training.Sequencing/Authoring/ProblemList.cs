using Training.Sequencing.Procedures;

namespace Training.Sequencing.Authoring;

/// <summary>The problems found so far; what is wrong in the same way for several kinds of vehicle is told once.</summary>
internal sealed class ProblemList
{
    private readonly List<AuthoringProblem> problems = [];
    private readonly HashSet<AuthoringProblem> told = [];

    public int Count => problems.Count;

    public IReadOnlyList<AuthoringProblem> All => problems;

    public void Add(AuthoringProblem problem)
    {
        if (told.Add(problem)) problems.Add(problem);
    }

    public void Add(string code, string sentence, ProblemSubject subject) => Add(new(code, sentence, subject));

    public void Add(string code, string sentence, SubjectKind kind, string id) => Add(code, sentence, new(kind, id));
}
