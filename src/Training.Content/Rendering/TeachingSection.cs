using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;
using Training.Sequencing.Procedures;

namespace Training.Content.Rendering;

/// <summary>
/// Finds the section of a lesson that teaches something about steps of a procedure, without a mark in the text: the first
/// of those sections that name the most of the steps, one of each side at least; where none does, the one that draws the
/// procedure's plan or its lists. A paragraph or a line of a list names a step if it has two thirds of the step's longer
/// words, by their beginnings, so that “opened” names “open”.
/// </summary>
internal static class TeachingSection
{
    private const int LeastLetters = 4;
    private const int Beginning = 5;

    /// <summary>The number of the heading, from 0; null where there is none.</summary>
    /// <param name="document">The lesson.</param>
    /// <param name="procedure">The procedure.</param>
    /// <param name="sides">The steps, each side by itself: of an order rule the earlier ones and the later ones.</param>
    public static int? Find(MarkdownDocument document, Procedure procedure, IReadOnlyList<IReadOnlyList<StepId>> sides)
    {
        List<List<HashSet<string>>> wanted = [.. sides.Select(side => side.Select(step => Words(TextOf(procedure, step))).ToList())];
        var headings = LessonOutline.Of(document).Headings.ToList();
        var (section, drawn) = (-1, default(int?));
        var named = new Dictionary<int, HashSet<(int Side, int Step)>>();
        foreach (var block in document)
        {
            if (block is HeadingBlock heading)
            {
                section = headings.IndexOf(heading);
                continue;
            }

            // The wrong answers of a question name steps, too.
            if (section < 0 || (block is CustomContainer container && OwnBlocks.Of(container) == OwnBlock.Check)) continue;
            if (IsDrawn(block, procedure)) drawn ??= section;
            foreach (var text in block is LeafBlock leaf ? [leaf] : block.Descendants<LeafBlock>())
            {
                var words = Words(LessonMarkdown.PlainText(text.Inline));
                foreach (var (side, steps) in wanted.Index())
                    foreach (var (step, of) in steps.Index())
                        if (of.Count > 0 && of.Count(words.Contains) * 3 >= of.Count * 2)
                            (named.TryGetValue(section, out var known) ? known : named[section] = []).Add((side, step));
            }
        }

        return named.Where(of => of.Value.Select(step => step.Side).Distinct().Count() == sides.Count)
            .OrderByDescending(of => of.Value.Count).ThenBy(of => of.Key).Select(of => (int?)of.Key).FirstOrDefault() ?? drawn;
    }

    private static bool IsDrawn(Block block, Procedure procedure) => block is CustomContainer container
        && OwnBlocks.Of(container) is { } kind && OwnBlocks.IsDrawn(kind)
        && OwnBlocks.Arguments(container) is [var id, ..] && id == procedure.Id.Value;

    private static string TextOf(Procedure procedure, StepId id) =>
        procedure.Steps.FirstOrDefault(step => step.Id == id)?.Do ?? procedure.Decoys.FirstOrDefault(decoy => decoy.Id == id)?.Do ?? "";

    private static HashSet<string> Words(string text) => [.. text.ToLowerInvariant()
        .Split([.. text.ToLowerInvariant().Where(letter => !char.IsLetter(letter)).Distinct()], StringSplitOptions.RemoveEmptyEntries)
        .Where(word => word.Length >= LeastLetters).Select(word => word[..Math.Min(Beginning, word.Length)])];
}
