using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Training.Content.Procedures;

namespace Training.Content.Qti;

/// <summary>
/// Files that are begun from an order question of QTI: a procedure whose rules are a chain, each still to be justified, and
/// a scenario that asks it where the question told a situation.
/// </summary>
public static class QtiDraft
{
    private const int LongestId = 60;
    private static readonly JsonSerializerOptions Quoted = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The files, the procedure first.</summary>
    /// <param name="order">The question.</param>
    /// <param name="isTaken">Whether something stands at a path already; another name is taken then.</param>
    public static IReadOnlyList<ContentFile> Of(QtiOrder order, Func<string, bool> isTaken)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(isTaken);
        var wished = Slug(order.Name, "order");
        var id = Enumerable.Range(1, int.MaxValue).Select(n => n == 1 ? wished : $"{wished}-{n}")
            .First(name => !isTaken($"procedures/{name}.yaml") && !isTaken($"scenarios/{name}.md"));
        var procedure = new ContentFile($"procedures/{id}.yaml", Procedure(order, id));
        return order.Situation.Count == 0 ? [procedure] : [procedure, new($"scenarios/{id}.md", Scenario(order, id))];
    }

    private static string Procedure(QtiOrder order, string id)
    {
        HashSet<string> used = new(StringComparer.Ordinal);
        string[] steps = [.. order.Right.Select(step => Unused(step.Name, "step", used))];
        string[] decoys = [.. order.Left.Select(step => Unused(step.Name, "decoy", used))];
        var text = new StringBuilder(
            """
            # Begun from a question of order that named one right order. Each rule below says that a step comes before the next,
            # as the question could say nothing else. Take out every rule that the work does not ask for: with it, right orders
            # are called wrong. Say of the others why they hold and what happens otherwise.

            """).Append("id: ").Append(id).Append("\ntitle: ").Append(Text(order.Title.Length > 0 ? order.Title : id)).Append("\nrevision: 1\nsteps:\n");
        foreach (var (step, choice) in steps.Zip(order.Right)) text.Append(CultureInfo.InvariantCulture, $"  - {{ id: {step}, do: {Text(choice.Text)} }}\n");
        if (decoys.Length > 0) text.Append("# The question offered these and did not name them in its order.\ndecoys:\n");
        foreach (var (decoy, choice) in decoys.Zip(order.Left))
            text.Append(CultureInfo.InvariantCulture, $"  - {{ id: {decoy}, do: {Text(choice.Text)}, because: {ToBeJustified.Words}, otherwise: {ToBeJustified.Words} }}\n");
        if (steps.Length > 1) text.Append("rules:\n");
        foreach (var (place, (first, then)) in steps.Zip(steps.Skip(1)).Index())
            text.Append(CultureInfo.InvariantCulture, $"  - {{ id: rule-{place + 1}, first: [{first}], then: [{then}], because: {ToBeJustified.Words}, otherwise: {ToBeJustified.Words} }}\n");
        return text.ToString();
    }

    private static string Scenario(QtiOrder order, string id) =>
        $"---\ntitle: {Text(order.Title.Length > 0 ? order.Title : id)}\nprocedure: {id}\nkinds: [order]\n---\n"
        + string.Join("\n\n", order.Situation.Select(Plain)) + "\n";

    // A string of JSON is one of YAML, too.
    private static string Text(string text) => JsonSerializer.Serialize(text, Quoted);

    /// <summary>Words that mean nothing more in Markdown than they say.</summary>
    private static string Plain(string text)
    {
        var plain = new StringBuilder();
        foreach (var c in text) plain.Append(char.IsAscii(c) && (char.IsPunctuation(c) || char.IsSymbol(c)) && c is not (',' or '?' or '\'' or '"' or '%' or '/' or ';') ? $"\\{c}" : c.ToString());
        return plain.ToString();
    }

    private static string Unused(string name, string otherwise, HashSet<string> used)
    {
        var slug = Slug(name, otherwise);
        return Enumerable.Range(1, int.MaxValue).Select(n => n == 1 ? slug : $"{slug}-{n}").First(used.Add);
    }

    private static string Slug(string name, string otherwise)
    {
        var slug = string.Join('-', string.Concat(name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'))
            .Split('-', StringSplitOptions.RemoveEmptyEntries));
        if (slug.Length > LongestId) slug = slug[..LongestId].Trim('-');
        return slug.Length > 0 ? slug : otherwise;
    }
}
