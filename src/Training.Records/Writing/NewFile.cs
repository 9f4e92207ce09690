using System.Text.RegularExpressions;
using Training.Content;
using Training.Sequencing;

namespace Training.Records.Writing;

/// <summary>A sort of file that a trainer can begin.</summary>
public enum NewFileSort
{
    /// <summary>An order of work with its rules.</summary>
    Procedure,

    /// <summary>A situation that is asked about.</summary>
    Scenario,

    /// <summary>A lesson.</summary>
    Module,

    /// <summary>What somebody is examined for.</summary>
    Competency,
}

/// <summary>A file that is begun: small, sound as far as that goes, and with a word on what comes where.</summary>
internal static partial class NewFile
{
    /// <summary>The file, or why it cannot be begun.</summary>
    /// <param name="sort">Its sort.</param>
    /// <param name="id">Its id; of a module its number and name, as in <c>12-tail-lifts</c>.</param>
    /// <param name="title">What it is called.</param>
    public static Outcome<ContentFile, Refusal> Of(NewFileSort sort, string id, string title)
    {
        if (!(sort == NewFileSort.Module ? ModuleId() : Id()).IsMatch(id))
            return sort == NewFileSort.Module
                ? new Refusal("The name of a module is its number and a word, such as 12-tail-lifts: digits, then lower-case letters, digits and hyphens.") { About = "name" }
                : new Refusal("A name consists of lower-case letters, digits and hyphens, such as fit-tail-lift.") { About = "name" };
        if (string.IsNullOrWhiteSpace(title) || title.Length > 120 || title.Any(char.IsControl))
            return new Refusal("Write what it is called, in at most 120 letters.") { About = "title" };
        return sort switch
        {
            NewFileSort.Procedure => new ContentFile($"procedures/{id}.yaml", Procedure(id, Quoted(title))),
            NewFileSort.Scenario => new ContentFile($"scenarios/{id}.md", Scenario(Quoted(title))),
            NewFileSort.Module => new ContentFile($"modules/{id}/lesson.md", Module(Quoted(title))),
            _ => new ContentFile($"competencies/{id}.yaml", Competency(id, Quoted(title))),
        };
    }

    // A JSON string is a YAML string; a title may hold a colon or a quote.
    private static string Quoted(string title) => $"\"{title.Trim().Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    private static string Procedure(string id, string title) =>
        $$"""
        # The steps stand in one right order. Every rule says what comes before what, why, and what happens otherwise.
        id: {{id}}
        title: {{title}}
        revision: 1
        steps:
          - { id: first-step, do: Do this first }
          - { id: second-step, do: Then do this }
        rules:
          - id: first-before-second
            first: [first-step]
            then: [second-step]
            because: Say why it must be so
            otherwise: Say what happens if it is not
            harm: people
            severity: serious

        """;

    private static string Scenario(string title) =>
        $"""
        ---
        title: {title}
        procedure: name-of-the-procedure
        kinds: [order]
        ---
        Say in a few plain sentences what stands in the bay, who is there, and what is to be done.

        """;

    private static string Module(string title) =>
        $"""
        ---
        title: {title}
        minutes: 20
        procedures: [name-of-the-procedure]
        ---
        Say in two or three sentences what this lesson is for.

        ## What can go wrong

        Say who or what is hurt, and how.

        """;

    private static string Competency(string id, string title) =>
        $$"""
        id: {{id}}
        title: {{title}}
        modules: [name-of-the-module]
        paper:
          questions:
            - { kind: order, from: [name-of-a-scenario], count: 1 }
          time: 30 min
          pass-mark: 80
          wait-after-failed: P1D
        observed:
          procedures: [name-of-the-procedure]
          within: P30D
        valid-for: P24M
        renew-from: P3M
        on-new-revision: keep

        """;

    [GeneratedRegex(@"\A[a-z0-9](?:[a-z0-9-]{0,58}[a-z0-9])?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Id();

    [GeneratedRegex(@"\A[0-9]{2,3}-[a-z0-9](?:[a-z0-9-]{0,58}[a-z0-9])?\z", RegexOptions.CultureInvariant)]
    private static partial Regex ModuleId();
}
