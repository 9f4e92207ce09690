using System.Globalization;
using Training.Content.Procedures;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Content.Tests.Published;

/// <summary>
/// A published order of work, read from <c>Data/published</c> by the reader of content files and graded by the engine.
/// What its text means is told a second time, in the test, as chains <c>a &lt; b c &lt; d</c> (each word left of a
/// sign comes before each word right of it), so that the rules in the file are checked and not repeated.
/// </summary>
internal sealed class PublishedOrder
{
    private readonly Grader grader;
    private readonly string[] steps;
    private readonly bool[,] before;

    private PublishedOrder(Procedure procedure, Grader grader, string[] meaning)
    {
        this.grader = grader;
        steps = [.. procedure.Steps.Select(step => step.Id.Value)];
        before = Closure(meaning);
    }

    /// <summary>The order as the file lists it.</summary>
    public IReadOnlyList<string> Printed => steps;

    public static PublishedOrder Of(string name, params string[] meaning)
    {
        var path = Path.Combine(AppContext.BaseDirectory, "Data", "published", name + ".yaml");
        var reading = ProcedureFile.Check(new($"procedures/{name}.yaml", File.ReadAllText(path)));
        Assert.Empty(reading.Problems);
        return new(reading.Procedure!, Grader.For(reading.Procedure!).Value, meaning);
    }

    /// <summary>Grades an order of step ids; a wait is written with its seconds, <c>wait:90</c>.</summary>
    public Verdict Grade(params IEnumerable<string> order) =>
        grader.Grade(new Answer([.. order.Select(EntryOf)])).Value;

    public bool Accepts(params IEnumerable<string> order) => Grade(order).Accepted;

    /// <summary>
    /// Tries every arrangement of the steps: the engine accepts just those that the meaning allows.
    /// </summary>
    /// <returns>How many arrangements it accepts.</returns>
    public int AcceptsJustWhatTheTextMeans()
    {
        var accepted = 0;
        foreach (var order in Arrangements(steps.Length))
        {
            var allowed = IsAllowed(order);
            Assert.Equal(allowed, Accepts(order.Select(step => steps[step])));
            if (allowed) accepted++;
        }

        return accepted;
    }

    /// <summary>Swaps every two steps of the listed order that the meaning puts in an order: each swap is refused.</summary>
    public void RefusesEverySwapThatTheTextForbids()
    {
        Assert.True(Accepts(steps));
        for (var a = 0; a < steps.Length; a++)
        {
            for (var b = a + 1; b < steps.Length; b++)
            {
                if (!before[a, b]) continue;
                string[] swapped = [.. steps];
                (swapped[a], swapped[b]) = (swapped[b], swapped[a]);
                var verdict = Grade(swapped);
                Assert.False(verdict.Accepted, $"{steps[a]} and {steps[b]} swapped");
                Assert.NotEqual(0, verdict.Cost);
            }
        }
    }

    private static Entry EntryOf(string word) => word.Split(':') is [var id, var seconds]
        ? new(new StepId(id)) { Stated = Duration.FromSeconds(decimal.Parse(seconds, CultureInfo.InvariantCulture)) }
        : new(new StepId(word));

    private bool[,] Closure(string[] meaning)
    {
        var pairs = new bool[steps.Length, steps.Length];
        foreach (var chain in meaning)
        {
            var links = chain.Split(" < ");
            for (var link = 1; link < links.Length; link++)
            {
                foreach (var first in links[link - 1].Split(' '))
                    foreach (var then in links[link].Split(' '))
                        pairs[NumberOf(first), NumberOf(then)] = true;
            }
        }

        for (var middle = 0; middle < steps.Length; middle++)
            for (var a = 0; a < steps.Length; a++)
                for (var b = 0; b < steps.Length; b++)
                    pairs[a, b] |= pairs[a, middle] && pairs[middle, b];
        return pairs;
    }

    private int NumberOf(string id)
    {
        var number = Array.IndexOf(steps, id);
        Assert.True(number >= 0, $"The file has no step {id}.");
        return number;
    }

    private bool IsAllowed(int[] order)
    {
        for (var a = 0; a < order.Length; a++)
            for (var b = a + 1; b < order.Length; b++)
                if (before[order[b], order[a]]) return false;
        return true;
    }

    private static IEnumerable<int[]> Arrangements(int count)
    {
        Assert.True(count <= 8, "More than 8! arrangements are too many to try.");
        int[] order = [.. Enumerable.Range(0, count)];
        do yield return order;
        while (ToNext(order));
    }

    // The next arrangement in the order of a dictionary; false after the last.
    private static bool ToNext(int[] order)
    {
        var rise = order.Length - 2;
        while (rise >= 0 && order[rise] > order[rise + 1]) rise--;
        if (rise < 0) return false;
        var larger = order.Length - 1;
        while (order[larger] < order[rise]) larger--;
        (order[rise], order[larger]) = (order[larger], order[rise]);
        Array.Reverse(order, rise + 1, order.Length - rise - 1);
        return true;
    }
}
