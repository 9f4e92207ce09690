using System.Buffers.Binary;
using System.IO.Compression;
using CsCheck;
using Training.Proofs.Signing;
using Training.Proofs.StatusLists;

namespace Training.Proofs.Tests.StatusLists;

public class StatusBitstringTests
{
    // The example of W3C Bitstring Status List 1.0 (Recommendation of 15 May 2025).
    private const string Published = "uH4sIAAAAAAAAA-3BMQEAAADCoPVPbQwfoAAAAAAAAAAAAAAAAAAAAIC3AYbSVKsAQAAA";

    [Fact]
    public void The_published_list_is_131072_bits_and_none_is_set()
    {
        StatusBitstring list = StatusBitstring.Decode(Published).Value;
        Assert.Equal(16_384, list.Bytes.Length);
        Assert.Equal(131_072, list.Entries);
        Assert.Equal(-1, list.Bytes.IndexOfAnyExcept((byte)0));
    }

    // [computed] by a second program from the rule that index 0 is the left-most bit.
    [Fact]
    public void Index_0_is_the_left_most_bit_and_the_last_index_the_right_most()
    {
        StatusBitstring list = StatusBitstring.Of([0, 94567, 131071]);
        Assert.Equal(0x80, list.Bytes[0]);
        Assert.Equal(0x01, list.Bytes[11820]);
        Assert.Equal(0x01, list.Bytes[16383]);
        Assert.Equal("0706fc8943d9b99cd40ce944f2217e7592a0d44f2ea38f69272a7e8e6dc81f57", Sha256Digest.Of(list.Bytes).ToString());
        Assert.True(list[0] && list[94567] && list[131071]);
        Assert.False(list[1] || list[94566] || list[131070]);
    }

    [Fact]
    public void A_list_reads_back_bit_for_bit() =>
        Gen.Int[0, StatusBitstring.LeastEntries - 1].Array[0, 50].Sample(set =>
        {
            StatusBitstring list = StatusBitstring.Of(set);
            StatusBitstring read = StatusBitstring.Decode(list.Encode()).Value;
            Assert.True(list.Bytes.SequenceEqual(read.Bytes));
            Assert.All(set, index => Assert.True(read[index]));
            Assert.Equal(set.Distinct().Count(), read.Bytes.ToArray().Sum(b => int.PopCount(b)));
        }, iter: 30);

    [Fact]
    public void A_list_that_is_too_short_to_hide_anyone_is_refused() =>
        Assert.Contains("131072", StatusBitstring.Decode(Zip(new byte[16_383])).Sentence, StringComparison.Ordinal);

    [Fact]
    public void A_list_that_unfolds_without_end_is_refused()
    {
        string bomb = Zip(new byte[64 << 20]);
        Assert.True(bomb.Length < 100_000);
        Assert.Contains("more than", StatusBitstring.Decode(bomb).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_that_unfolds_to_another_length_than_it_tells_is_refused()
    {
        byte[] zipped = Multibase.DecodeBase64Url(Zip(new byte[64 << 20])).Value;
        BinaryPrimitives.WriteInt32LittleEndian(zipped.AsSpan()[^4..], 16_384);
        Assert.False(StatusBitstring.Decode(Multibase.EncodeBase64Url(zipped)).IsOk);
        byte[] twice = Multibase.DecodeBase64Url(Published).Value;
        Assert.False(StatusBitstring.Decode(Multibase.EncodeBase64Url([.. twice, .. twice])).IsOk);
    }

    [Fact]
    public void The_largest_list_is_read() =>
        Assert.Equal(StatusBitstring.MostEntries, StatusBitstring.Decode(Zip(new byte[StatusBitstring.MostEntries / 8])).Value.Entries);

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("u")]
    [InlineData("uAAAA")]
    [InlineData("H4sIAAAAAAAAA-3BMQEAAADCoPVPbQwfoAAAAAAAAAAAAAAAAAAAAIC3AYbSVKsAQAAA")]
    [InlineData("zH4sIAAAAAAAAA")]
    [InlineData("uH4sIAAAAAAAAA-3BMQEAAADCoPVPbQwfoAAAAAAAAAAAAAAAAAAAAIC3AYbSVKsAQAAA=")]
    [InlineData("uH4sIAAAAAAAAA-3BMQEAAADCoPVPbQwfoAAAAAAAAAAA")]
    public void What_is_no_list_is_refused(string? text) => Assert.False(StatusBitstring.Decode(text).IsOk);

    [Fact]
    public void A_list_that_was_cut_short_is_refused()
    {
        for (int length = 1; length < Published.Length; length++)
            Assert.False(StatusBitstring.Decode(Published[..length]).IsOk, Published[..length]);
    }

    [Fact]
    public void Sizes_and_indexes_that_cannot_be_are_faults_of_the_calling_code()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StatusBitstring.Of([], 1024));
        Assert.Throws<ArgumentOutOfRangeException>(() => StatusBitstring.Of([], StatusBitstring.LeastEntries + 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => StatusBitstring.Of([StatusBitstring.LeastEntries]));
        Assert.Throws<ArgumentOutOfRangeException>(() => StatusBitstring.Of([-1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => StatusBitstring.Of([])[StatusBitstring.LeastEntries]);
    }

    private static string Zip(byte[] bits)
    {
        using MemoryStream zipped = new();
        using (GZipStream zip = new(zipped, CompressionLevel.SmallestSize, leaveOpen: true))
            zip.Write(bits);
        return Multibase.EncodeBase64Url(zipped.ToArray());
    }
}
