using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Tests.Generating;

/// <summary>Random answers: a right order with some of everything that people do to it.</summary>
internal static class RandomAnswer
{
    private static readonly decimal[] StatedTimes = [0, 5, 20, 60, 90, 200];

    public static Answer Of(Procedure procedure, Grader grader, Random random, bool mayStart = false)
    {
        var given = procedure.Steps.Where(step => random.Next(2) == 0).Select(step => step.Id).ToArray();
        random.Shuffle(given);
        var orders = RightOrders.For(procedure, grader.Variant, given);
        var ids = orders.Some(random).Select(step => orders.Steps[step].Id).ToList();
        var start = mayStart ? Start(procedure, grader, ids, random) : [];
        ids.RemoveRange(0, start.Length);
        for (var spoilt = random.Next(6); spoilt > 0; spoilt--) Spoil(ids, procedure, random);
        return new([.. ids.Select(id => Entry(procedure, id, random))]) { Start = start };
    }

    /// <summary>The same with real times: steps overlap, drag and hurry.</summary>
    public static Answer Observed(Answer answer, Random random)
    {
        var clock = 0m;
        var entries = answer.Entries.Select(entry =>
        {
            clock += random.Next(40);
            Assert.True(Times.TryCreate(
                Duration.FromSeconds(clock), Duration.FromSeconds(clock + random.Next(60)), out var times));
            return entry with { Stated = null, Observed = times };
        });
        return answer with { Entries = [.. entries] };
    }

    /// <summary>Anything that the types allow: any ids, any times on any entry, any start.</summary>
    public static Answer Wild(Procedure procedure, Random random)
    {
        StepId[] ids = [.. procedure.Steps.Select(step => step.Id), .. procedure.Decoys.Select(decoy => decoy.Id)];
        var isTame = random.Next(3) > 0;
        return new(Entries(random.Next(30))) { Start = random.Next(2) == 0 ? [] : Entries(random.Next(5)) };

        Entry[] Entries(int count) => [.. Enumerable.Range(0, count).Select(_ => One())];

        Entry One()
        {
            if (!isTame && random.Next(20) == 0) return new(default);
            var entry = new Entry(ids[random.Next(ids.Length)]);
            if (isTame) return Entry(procedure, entry.Step, random);
            var time = Duration.FromSeconds(random.Next(5) == 0 ? Duration.Longest.Seconds : random.Next(100));
            Times.TryCreate(time, Duration.Longest, out var times);
            return entry with
            {
                Stated = random.Next(4) == 0 ? time : null,
                Observed = random.Next(3) == 0 ? times : null,
            };
        }
    }

    /// <summary>The same with two entries in each other's place.</summary>
    public static Answer Swapped(Answer answer, Random random)
    {
        if (answer.Entries.Count == 0) return answer;
        var entries = answer.Entries.ToArray();
        var (a, b) = (random.Next(entries.Length), random.Next(entries.Length));
        (entries[a], entries[b]) = (entries[b], entries[a]);
        return answer with { Entries = entries };
    }

    public static Entry LongEnough(Step step) =>
        new(step.Id) { Stated = step.IsWait ? Duration.FromSeconds(1000) : null };

    private static Entry[] Start(Procedure procedure, Grader grader, List<StepId> ids, Random random)
    {
        for (var length = random.Next(ids.Count + 1); length > 0; length--)
        {
            Entry[] start = [.. ids.Take(length).Select(id => random.Next(4) == 0
                ? Entry(procedure, id, random)
                : LongEnough(procedure.Steps.Single(step => step.Id == id)))];
            if (grader.CheckStart(start) is null) return start;
        }

        return [];
    }

    private static Entry Entry(Procedure procedure, StepId id, Random random)
    {
        var isWait = procedure.Steps.Any(step => step.Id == id && step.IsWait);
        return new(id)
        {
            Stated = isWait && random.Next(5) > 0
                ? Duration.FromSeconds(StatedTimes[random.Next(StatedTimes.Length)])
                : null,
        };
    }

    private static void Spoil(List<StepId> ids, Procedure procedure, Random random)
    {
        var at = random.Next(ids.Count + 1);
        switch (random.Next(5))
        {
            case 0 when ids.Count > 0:
                var moved = ids[at % ids.Count];
                ids.RemoveAt(at % ids.Count);
                ids.Insert(random.Next(ids.Count + 1), moved);
                break;
            case 1 when ids.Count > 0:
                ids.RemoveAt(at % ids.Count);
                break;
            case 2 when ids.Count > 0:
                ids.Insert(at, ids[random.Next(ids.Count)]);
                break;
            case 3 when procedure.Decoys.Count > 0:
                ids.Insert(at, procedure.Decoys[0].Id);
                break;
            default:
                ids.Insert(at, procedure.Steps[random.Next(procedure.Steps.Count)].Id);
                break;
        }
    }
}
