using Training.Content.Comparing;
using Training.Content.Tests.Shipped;
using Training.Sequencing.Comparing;

namespace Training.Content.Tests.Comparing;

/// <summary>What is told of two states of a file.</summary>
public sealed class FileComparisonTests
{
    private const string Competency = "id: batteries\ntitle: Batteries\npaper:\n  questions:\n    - { kind: order, from: [a, b], count: 1 }\n  time: 25 min\nvalid-for: P24M\n";

    [Fact]
    public void A_file_is_the_same_as_itself() =>
        Assert.All(ShippedContent.Files, file => Assert.Null(FileComparison.Of(file, file with { }).Kind));

    [Fact]
    public void A_remark_or_another_setting_changes_the_file_and_not_what_it_says() => Assert.All(
        ShippedContent.Files.Where(file => file.Path.EndsWith(".yaml", StringComparison.Ordinal)),
        file =>
        {
            var comparison = FileComparison.Of(file, file with { Text = "# A remark.\n" + file.Text + "\n" });
            Assert.Equal(ChangeKind.Changed, comparison.Kind);
            Assert.True(comparison.SaysTheSame, file.Path);
        });

    [Fact]
    public void A_key_that_changed_is_named_by_the_keys_that_lead_to_it()
    {
        var comparison = Compared("competencies/batteries.yaml", Competency, Competency.Replace("25 min", "30 min", StringComparison.Ordinal).Replace("[a, b]", "[a, c]", StringComparison.Ordinal));
        Assert.Equal(["paper.questions.1.from", "paper.time"], comparison.Parts.Select(part => part.Name));
        Assert.All(comparison.Parts, part => Assert.True(part.IsKey));
        Assert.Equal("25", Assert.Single(comparison.Parts[1].Words.Pieces, piece => piece.Kind == PieceKind.Gone).Text);
    }

    [Fact]
    public void A_key_that_is_new_and_one_that_is_gone_are_told_as_such()
    {
        var comparison = Compared("competencies/batteries.yaml", Competency, Competency.Replace("valid-for: P24M", "renew-from: P3M", StringComparison.Ordinal));
        Assert.Equal([(ChangeKind.New, "renew-from"), (ChangeKind.Gone, "valid-for")], comparison.Parts.Select(part => (part.Kind, part.Name)));
    }

    [Fact]
    public void The_entries_of_a_list_are_known_by_their_ids_wherever_they_stand()
    {
        const string before = "terms:\n  - { id: acid, word: acid, meaning: It burns. }\n  - { id: arc, word: arc, meaning: A flame. }\n";
        const string after = "terms:\n  - { id: arc, word: arc, meaning: A bright flame. }\n  - { id: acid, word: acid, meaning: It burns. }\n";
        Assert.Equal(["terms.arc.meaning"], Compared("glossary/en.yaml", before, after).Parts.Select(part => part.Name));
    }

    [Fact]
    public void A_lesson_is_compared_paragraph_by_paragraph_under_its_headings()
    {
        const string before = "---\ntitle: T\n---\nFirst.\n\n## Wait\n\nWait 60 s here.\n\nThen go on.\n\n## End\n\nGone for good.\n";
        const string after = "---\ntitle: T\n---\nFirst.\n\n## Wait\n\nWait 90 s here.\n\nThen go on.\n\nLook back.\n\n## End\n";
        var parts = Compared("modules/01-a/lesson.md", before, after).Parts;
        Assert.Equal([(ChangeKind.Changed, "Wait"), (ChangeKind.New, "Wait"), (ChangeKind.Gone, "End")], parts.Select(part => (part.Kind, part.Name)));
        Assert.All(parts, part => Assert.False(part.IsKey));
    }

    [Fact]
    public void A_procedure_is_compared_by_what_it_asks()
    {
        var file = ShippedContent.Files.Single(file => file.Path == "procedures/isolate-chassis.yaml");
        var comparison = FileComparison.Of(file, file with { Text = file.Text.Replace("revision: 1", "revision: 2", StringComparison.Ordinal) });
        Assert.Equal("It is revision 2 now; it was 1.", Assert.Single(comparison.Procedure!.Changes).Said.ToString());
        Assert.Equal(["bus-l18", "truck-k26"], comparison.Procedure.Orders.Select(orders => orders.Variant.ToString()));
        Assert.Empty(comparison.Parts);
    }

    [Fact]
    public void A_procedure_that_cannot_be_read_is_compared_by_its_words()
    {
        var comparison = Compared("procedures/a.yaml", "id: a\ntitle: A\n", "id: a\ntitle: [\n");
        Assert.Null(comparison.Procedure);
        Assert.NotEmpty(comparison.Parts);
    }

    [Fact]
    public void A_file_that_was_not_there_is_new_and_one_that_is_not_there_any_more_is_gone()
    {
        var file = new ContentFile("competencies/batteries.yaml", Competency);
        Assert.Equal(ChangeKind.New, FileComparison.Of(null, file).Kind);
        Assert.Equal(ChangeKind.Gone, FileComparison.Of(file, null).Kind);
        Assert.All(FileComparison.Of(null, file).Parts, part => Assert.Equal(ChangeKind.New, part.Kind));
    }

    [Fact]
    public void Of_a_picture_it_is_told_that_it_differs() =>
        Assert.True(Compared("modules/01-a/pictures/a.svg", "<svg/>", "<svg></svg>") is { IsPicture: true, SaysTheSame: false });

    private static FileComparison Compared(string path, string before, string after) => FileComparison.Of(new(path, before), new(path, after));
}
