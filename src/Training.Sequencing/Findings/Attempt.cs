using Training.Sequencing.Answers;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Replaying;

namespace Training.Sequencing.Findings;

/// <summary>An answer with everything that the laws look at: the plan of its step set, where each step stands, the replay.</summary>
internal sealed class Attempt
{
    /// <summary>The place of what is not there.</summary>
    public const int Nowhere = int.MaxValue;

    private readonly int[] firstPlaces;

    public Attempt(Layout layout, Reading reading, StepChoice choice, Plan plan, StepSet? late)
    {
        (Layout, Reading, Choice, Plan, Late) = (layout, reading, choice, plan, late);
        Replay = Replay.Of(layout, reading);
        firstPlaces = new int[layout.StepCount + layout.Strangers.Length];
        Array.Fill(firstPlaces, Nowhere);
        for (var e = reading.Entries.Length - 1; e >= 0; e--) firstPlaces[reading.Entries[e]] = e;
        for (var e = reading.Start.Length - 1; e >= 0; e--) firstPlaces[reading.Start[e]] = e - reading.Start.Length;
        ToDo = plan.StepCount - reading.Start.Length;
        Roles = new Role[reading.Entries.Length];
        for (var e = 0; e < Roles.Length; e++) Roles[e] = RoleOf(e);
    }

    public Layout Layout { get; }

    public Reading Reading { get; }

    public StepChoice Choice { get; }

    public Plan Plan { get; }

    public Replay Replay { get; }

    /// <summary>Steps that the answer brings although something that must come after them was already done.</summary>
    public StepSet? Late { get; }

    /// <summary>How many steps of the step set the answer has to do: all but those of the start.</summary>
    public int ToDo { get; }

    /// <summary>What each entry of the answer is.</summary>
    public Role[] Roles { get; }

    /// <summary>
    /// Where a step first stands: the answer's first entry has place 0, entries of the start have negative places.
    /// </summary>
    public int FirstPlaceOf(int number) => firstPlaces[number];

    /// <summary>Whether a step was done before the answer began.</summary>
    public bool WasDone(int step) => firstPlaces[step] < 0;

    /// <summary>Whether an entry is a step that the answer has to do, be it for the first time or again.</summary>
    public bool IsCandidate(int place)
    {
        var number = Reading.Entries[place];
        return number < Layout.StepCount && Plan.Steps.Has(number) && !WasDone(number);
    }

    private Role RoleOf(int place)
    {
        var number = Reading.Entries[place];
        if (number >= Layout.StepCount) return Role.Stranger;
        if (firstPlaces[number] != place) return Role.Repeated;
        if (Late?.Has(number) == true) return Role.Late;
        return Plan.Steps.Has(number) ? Role.Step : Role.ExtraChoice;
    }
}

/// <summary>What an entry of an answer is.</summary>
internal enum Role : byte
{
    /// <summary>A step of the step set, for the first time.</summary>
    Step,

    /// <summary>A step that was done before, in the answer or in the start.</summary>
    Repeated,

    /// <summary>A second member of a one-of group.</summary>
    ExtraChoice,

    /// <summary>A step that can no longer be done: what must come after it was done before the answer began.</summary>
    Late,

    /// <summary>A decoy, or a step of another kind of vehicle.</summary>
    Stranger,
}
