namespace Training.Content.Tests;

public sealed class ContentFileTests
{
    // FIPS 180-2, appendix B.1.
    [Fact]
    public void The_hash_is_SHA_256_of_the_text() =>
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", new ContentFile("x", "abc").Hash.Hex);

    [Fact]
    public void The_hash_is_taken_of_UTF_8() =>
        Assert.Equal(ContentHash.Of("Précaución"), new ContentFile("y", "Précaución").Hash);

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("BA7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015a")]
    public void What_is_no_hash_is_not_read_as_one(string? text) => Assert.False(ContentHash.TryParse(text, out _));

    [Fact]
    public void A_hash_is_read_back_from_its_digits()
    {
        var hash = ContentHash.Of("key off");
        Assert.True(ContentHash.TryParse(hash.ToString(), out var read));
        Assert.Equal(hash, read);
    }

    [Fact]
    public void A_byte_order_mark_is_no_part_of_the_text()
    {
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(path, [0xEF, 0xBB, 0xBF, (byte)'a']);
            Assert.Equal("a", ContentFolder.ReadFile(path, "a").Text);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
