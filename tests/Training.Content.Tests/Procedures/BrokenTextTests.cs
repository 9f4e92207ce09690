using CsCheck;
using Training.Content.Procedures;

namespace Training.Content.Tests.Procedures;

/// <summary>Whatever people save, the reader answers with problems that have a place, never with an exception.</summary>
public sealed class BrokenTextTests
{
    private static readonly string[] Pieces =
    [
        "id: ", "steps:\n", "  - { ", "}", "[", "]", "\"", "'", "&a ", "*a", "!!x ", "| \n", ">-\n", "---\n", "...\n", "? ", ": ", "- ", "#", "%YAML 1.2\n",
        "\t", "\n", "\r\n", ",", "first: ", "only-while: ", "\\u12", "\\ud83d", "\u2028", "\u0085", "\uFEFF", "😀", "\0", "~", "null", "1e999", "::: danger\n", "](", "![", "<a>",
    ];

    private static readonly Gen<string> Piece = Gen.OneOf(Gen.OneOf(Pieces), Gen.String[0, 6]);

    private static Gen<string> Broken(string good) =>
        Gen.Select(Gen.Int[0, good.Length], Gen.Int[0, 40], Piece.Array[0, 4], (at, length, pieces) =>
            good[..at] + string.Concat(pieces) + good[Math.Min(good.Length, at + length)..]);

    [Fact]
    public void A_broken_procedure_is_told_with_a_place()
    {
        var good = ContentFolders.File("procedures/change-relay-tray.yaml").Text;
        Broken(good).Sample(text => HavePlaces(ProcedureFile.Check(new("procedures/change-relay-tray.yaml", text)).Problems, text));
    }

    [Fact]
    public void Arbitrary_text_is_told_with_a_place() =>
        Piece.Array[0, 40].Select(string.Concat).Sample(text => HavePlaces(ProcedureFile.Check(new("p.yaml", text)).Problems, text));

    [Theory]
    [InlineData("modules/01-relay-tray/lesson.md")]
    [InlineData("modules/01-relay-tray/lesson.es.md")]
    [InlineData("modules/01-relay-tray/pictures/tray.svg")]
    [InlineData("scenarios/half-way.md")]
    [InlineData("procedures/change-relay-tray.es.yaml")]
    [InlineData("competencies/relay-work.yaml")]
    public void Any_broken_file_is_told_with_a_place(string path) =>
        Broken(ContentFolders.File(path).Text).Sample(
            text => HavePlaces([.. ContentReader.Read(ContentFolders.With(path, text)).Problems.Where(problem => problem.File == path)], text),
            iter: 60);

    private static bool HavePlaces(IReadOnlyList<ContentProblem> problems, string text)
    {
        // YAML counts more characters as line ends than an editor does.
        var lines = text.Split(["\r\n", "\n", "\r", "\u2028", "\u2029", "\u0085"], StringSplitOptions.None);
        return problems.All(problem =>
            problem.Line >= 1 && problem.Line <= lines.Length + 1 && problem.Column >= 1
            && problem.Sentence.Length > 0 && !problem.Sentence.Any(char.IsControl));
    }
}
