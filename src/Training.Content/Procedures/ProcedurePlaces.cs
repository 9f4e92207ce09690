using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Procedures;

/// <summary>Where the parts of a procedure stand in its file, so that a problem that the engine finds has a line.</summary>
internal sealed class ProcedurePlaces
{
    private readonly Dictionary<ProblemSubject, Place> places = [];

    /// <summary>Where the procedure's id is written.</summary>
    public Place Id { get; set; } = Place.Start;

    /// <summary>Where the procedure that it mirrors is named.</summary>
    public Place Mirror { get; set; } = Place.Start;

    /// <summary>Where each pair of the mirror stands, in their order.</summary>
    public List<Place> Pairs { get; } = [];

    public void Add(SubjectKind kind, string id, Place place) => places.TryAdd(new(kind, id), place);

    /// <summary>The place of what a problem is about; steps and decoys share one name space.</summary>
    public Place Of(ProblemSubject subject)
    {
        if (subject.Kind == SubjectKind.Mirror) return Mirror;
        if (places.TryGetValue(subject, out var place)) return place;
        var other = subject.Kind == SubjectKind.Step ? SubjectKind.Decoy : SubjectKind.Step;
        return subject.Kind is SubjectKind.Step or SubjectKind.Decoy && places.TryGetValue(new(other, subject.Id), out place)
            ? place
            : Id;
    }
}
