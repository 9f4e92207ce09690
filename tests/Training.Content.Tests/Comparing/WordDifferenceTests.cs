using CsCheck;
using Training.Content.Comparing;

namespace Training.Content.Tests.Comparing;

/// <summary>Two texts word by word.</summary>
public sealed class WordDifferenceTests
{
    private static readonly string[] Words = ["wait", "the ", "isolator", " ", "\n", ", ", "90 s", ".", "é", "द"];
    private static readonly Gen<string> Texts = Gen.Int[0, Words.Length - 1].Array[0, 30].Select(picked => string.Concat(picked.Select(word => Words[word])));

    [Fact]
    public void The_pieces_make_both_texts_letter_for_letter() => Gen.Select(Texts, Texts).Sample((before, after) =>
    {
        var pieces = WordDifference.Of(before, after).Pieces;
        Assert.Equal(before, string.Concat(pieces.Where(piece => piece.Kind != PieceKind.New).Select(piece => piece.Text)));
        Assert.Equal(after, string.Concat(pieces.Where(piece => piece.Kind != PieceKind.Gone).Select(piece => piece.Text)));
    }, iter: 5_000);

    [Fact]
    public void Equal_texts_have_nothing_new_and_nothing_gone() => Texts.Sample(text =>
        Assert.DoesNotContain(WordDifference.Of(text, text).Pieces, piece => piece.Kind != PieceKind.Same), iter: 500);

    [Fact]
    public void A_word_that_was_put_in_place_of_another_is_marked_and_nothing_else() => Assert.Equal(
        [new(PieceKind.Same, "Wait "), new(PieceKind.Gone, "60"), new(PieceKind.New, "90"), new(PieceKind.Same, " s, then open.")],
        WordDifference.Of("Wait 60 s, then open.", "Wait 90 s, then open.").Pieces);

    [Fact]
    public void A_text_of_very_many_words_is_told_as_a_whole()
    {
        var pieces = WordDifference.Of(string.Concat(Enumerable.Repeat("one ", 5_000)), string.Concat(Enumerable.Repeat("other ", 5_000))).Pieces;
        Assert.Equal([PieceKind.Gone, PieceKind.New], pieces.Select(piece => piece.Kind));
    }
}
