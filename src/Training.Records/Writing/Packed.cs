using System.IO.Compression;
using System.Text;

namespace Training.Records.Writing;

/// <summary>Texts as they are kept by the thousand: UTF-8, compressed by Brotli (RFC 7932).</summary>
internal static class Packed
{
    public static byte[] Pack(string text)
    {
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.Fastest)) brotli.Write(Encoding.UTF8.GetBytes(text));
        return packed.ToArray();
    }

    public static string Unpack(byte[] packed)
    {
        using var brotli = new BrotliStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var reader = new StreamReader(brotli, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), detectEncodingFromByteOrderMarks: false);
        return reader.ReadToEnd();
    }
}
