namespace Training.Proofs.Signing;

/// <summary>Base58 with the Bitcoin alphabet, as Controlled Identifiers 1.0, section 3.4, uses it.</summary>
public static class Base58
{
    /// <summary>The longest text that is read; reading takes time by the square of the length.</summary>
    public const int MostCharacters = 128;

    private const string Alphabet = "123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz";

    /// <summary>Writes bytes; each zero byte at the front becomes the digit 1.</summary>
    public static string Encode(ReadOnlySpan<byte> data)
    {
        int zeros = data.Length - data.TrimStart((byte)0).Length;
        List<int> digits = [];
        foreach (byte next in data[zeros..])
        {
            int carry = next;
            for (int i = 0; i < digits.Count; i++)
            {
                carry += digits[i] << 8;
                (carry, digits[i]) = Math.DivRem(carry, 58);
            }
            for (; carry > 0; carry /= 58)
                digits.Add(carry % 58);
        }
        return new string('1', zeros) + string.Concat(Enumerable.Reverse(digits).Select(digit => Alphabet[digit]));
    }

    /// <summary>Reads at most <see cref="MostCharacters"/> characters.</summary>
    public static Outcome<byte[]> Decode(ReadOnlySpan<char> text)
    {
        if (text.Length > MostCharacters)
            return new Refused($"A base58 text may have {MostCharacters} characters, this one has {text.Length}.");
        int zeros = text.Length - text.TrimStart('1').Length;
        List<byte> bytes = [];
        foreach (char next in text[zeros..])
        {
            int carry = Alphabet.IndexOf(next, StringComparison.Ordinal);
            if (carry < 0)
                return new Refused("A base58 text holds a character that is not in its alphabet.");
            for (int i = 0; i < bytes.Count; i++)
            {
                carry += bytes[i] * 58;
                bytes[i] = (byte)carry;
                carry >>= 8;
            }
            for (; carry > 0; carry >>= 8)
                bytes.Add((byte)carry);
        }
        return (byte[])[.. new byte[zeros], .. Enumerable.Reverse(bytes)];
    }
}
