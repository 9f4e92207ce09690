using System.Buffers.Binary;
using System.IO.Compression;
using Training.Proofs.Signing;

namespace Training.Proofs.StatusLists;

/// <summary>
/// One bit for each credential of a list (W3C Bitstring Status List 1.0): index 0 is the left-most bit of the first
/// byte. Lists are long, 131 072 entries at least, so that nobody can tell from a look-up whose credential is meant.
/// </summary>
public sealed class StatusBitstring
{
    /// <summary>The least number of entries (section 2.2): 131 072, that is 16 KiB.</summary>
    public const int LeastEntries = 131_072;

    /// <summary>
    /// The greatest number of entries that is read: 16 777 216, that is 2 MiB. A kilobyte of GZIP can unfold to a
    /// megabyte; reading stops here.
    /// </summary>
    public const int MostEntries = 1 << 24;

    // RFC 1952: ten bytes in front, eight behind.
    private const int ShortestGzip = 18;

    private readonly byte[] bits;

    private StatusBitstring(byte[] bits) => this.bits = bits;

    /// <summary>The number of entries.</summary>
    public int Entries => bits.Length * 8;

    /// <summary>The bits, eight to the byte.</summary>
    public ReadOnlySpan<byte> Bytes => bits;

    /// <summary>Whether the bit of an entry is set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such entry.</exception>
    public bool this[int index]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Entries);
            return (bits[index / 8] & Mask(index)) != 0;
        }
    }

    /// <summary>Makes a list.</summary>
    /// <param name="set">The indexes whose bit is set.</param>
    /// <param name="entries">The number of entries, a multiple of eight.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size or an index that cannot be.</exception>
    public static StatusBitstring Of(IEnumerable<int> set, int entries = LeastEntries)
    {
        ArgumentNullException.ThrowIfNull(set);
        ArgumentOutOfRangeException.ThrowIfLessThan(entries, LeastEntries);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(entries, MostEntries);
        ArgumentOutOfRangeException.ThrowIfNotEqual(entries % 8, 0, nameof(entries));
        byte[] bits = new byte[entries / 8];
        foreach (int index in set)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index, nameof(set));
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, entries, nameof(set));
            bits[index / 8] |= Mask(index);
        }
        return new(bits);
    }

    /// <summary>
    /// Reads the text of <see cref="Encode"/>. Refused: another alphabet, no GZIP, fewer than
    /// <see cref="LeastEntries"/> or more than <see cref="MostEntries"/>.
    /// </summary>
    public static Outcome<StatusBitstring> Decode(string? encoded)
    {
        Outcome<byte[]> compressed = Multibase.DecodeBase64Url(encoded);
        if (!compressed.IsOk)
            return new Refused(compressed.Sentence);
        if (compressed.Value.Length < ShortestGzip)
            return new Refused("The status list is not whole GZIP data.");
        // RFC 1952 has the unfolded length in the last four bytes. It may lie: exactly that much must then come out. The
        // framework by itself reads on where the end of the data is cut off.
        uint told = BinaryPrimitives.ReadUInt32LittleEndian(compressed.Value.AsSpan()[^sizeof(uint)..]);
        if (told > MostEntries / 8)
            return new Refused($"The status list unfolds to more than {MostEntries} entries.");
        byte[] bits = new byte[told + 1];
        int length;
        try
        {
            using GZipStream unzip = new(new MemoryStream(compressed.Value), CompressionMode.Decompress);
            length = unzip.ReadAtLeast(bits, bits.Length, throwOnEndOfStream: false);
        }
        catch (InvalidDataException)
        {
            return new Refused("The status list is not whole GZIP data.");
        }
        if (length != told)
            return new Refused("The status list is not whole GZIP data.");
        return length < LeastEntries / 8
            ? new Refused($"The status list has {length * 8L} entries; it must have {LeastEntries} at least.")
            : new StatusBitstring(bits[..length]);
    }

    /// <summary>The list as text: the letter u and base64url of the GZIP of the bits.</summary>
    public string Encode()
    {
        using MemoryStream compressed = new();
        using (GZipStream zip = new(compressed, CompressionLevel.SmallestSize, leaveOpen: true))
            zip.Write(bits);
        return Multibase.EncodeBase64Url(compressed.ToArray());
    }

    private static byte Mask(int index) => (byte)(0x80 >> (index % 8));
}
