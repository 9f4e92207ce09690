using System.Buffers.Text;

namespace Training.Proofs.Signing;

/// <summary>
/// Bytes as text whose first letter names the alphabet (Controlled Identifiers 1.0, section 3.4). Two are used here:
/// <c>z</c> base58btc for keys and signatures, <c>u</c> base64url without padding for status lists.
/// </summary>
public static class Multibase
{
    /// <summary>Writes <c>z</c> and base58btc.</summary>
    public static string EncodeBase58(ReadOnlySpan<byte> data) => "z" + Base58.Encode(data);

    /// <summary>Reads <c>z</c> and base58btc; any other alphabet is refused.</summary>
    public static Outcome<byte[]> DecodeBase58(string? text) =>
        text is ['z', ..]
            ? Base58.Decode(text.AsSpan(1))
            : new Refused("A key or signature is written as the letter z and base58.");

    /// <summary>Writes <c>u</c> and base64url without padding.</summary>
    public static string EncodeBase64Url(ReadOnlySpan<byte> data) => "u" + Base64Url.EncodeToString(data);

    /// <summary>Reads <c>u</c> and base64url without padding; any other alphabet is refused.</summary>
    public static Outcome<byte[]> DecodeBase64Url(string? text)
    {
        if (text is not ['u', ..] || text.Contains('=', StringComparison.Ordinal))
            return new Refused("A status list is written as the letter u and base64url without padding.");
        try
        {
            byte[] data = Base64Url.DecodeFromChars(text.AsSpan(1));
            return EncodeBase64Url(data) == text
                ? data
                : new Refused("The base64url text has letters or bits that stand for nothing.");
        }
        catch (FormatException)
        {
            return new Refused("The text after the letter u is not base64url.");
        }
    }
}
