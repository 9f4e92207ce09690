using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Layouts;

/// <summary>The facts of a procedure by number, what holds at the start and what each step sets.</summary>
internal sealed class FactLayout
{
    private readonly IReadOnlyList<Fact> facts;

    public FactLayout(Procedure procedure, Step[] steps)
    {
        facts = procedure.Facts;
        Sets = [.. steps.Select(step => step.Sets.Select(NumberOf).ToArray())];
    }

    public int Count => facts.Count;

    /// <summary>What each step sets.</summary>
    public Setting[][] Sets { get; }

    public FactId IdOf(int fact) => facts[fact].Id;

    public string NameOf(int fact) => facts[fact].Id.Value;

    public string ValueOf(Setting setting) => facts[setting.Fact].Values[setting.Value].Value;

    /// <summary>A value as a sentence names it.</summary>
    public FactState Named(Setting setting) => new(facts[setting.Fact].Id, facts[setting.Fact].Values[setting.Value]);

    /// <summary>The values as the outside knows them: the first of every fact, unless a step set another.</summary>
    public FactSetting[] Named(int[] values)
    {
        var named = new FactSetting[values.Length];
        for (var f = 0; f < values.Length; f++) named[f] = new(facts[f].Id, facts[f].Values[values[f]]);
        return named;
    }

    /// <summary>The value that a step sets a fact to, or -1.</summary>
    public int SetBy(int step, int fact)
    {
        foreach (var setting in Sets[step])
            if (setting.Fact == fact) return setting.Value;
        return -1;
    }

    public Setting NumberOf(FactSetting setting)
    {
        for (var f = 0; f < facts.Count; f++)
        {
            if (facts[f].Id != setting.Fact) continue;
            for (var v = 0; v < facts[f].Values.Count; v++)
                if (facts[f].Values[v] == setting.Value) return new(f, v);
        }

        throw new InvalidOperationException($"The procedure has no fact {setting.Fact} with a value {setting.Value}.");
    }
}
