using System.Security.Cryptography;
using Training.Proofs.Signing;
using Training.Sequencing;

namespace Training.Records.Issuers;

/// <summary>
/// The secret half of the present key, in a file that only the server's own user can read. It is not encrypted: whatever
/// could open it would have to lie beside it. One for the process.
/// </summary>
internal sealed class IssuerKeyFile(IssuerPlace place) : IDisposable
{
    private readonly Lock oneAtATime = new();
    private SigningKey? key;

    /// <summary>The present key; made where there is none yet.</summary>
    public Outcome<SigningKey, Refusal> Present()
    {
        lock (oneAtATime)
        {
            if (key is not null) return key;
            if (!File.Exists(place.KeyFile)) return Take(Write());
            if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(place.KeyFile, UnixFileMode.UserRead | UnixFileMode.UserWrite);
            var text = File.ReadAllText(place.KeyFile).Trim();
            if (text.Length != 2 * SigningKey.SeedLength || !text.All(char.IsAsciiHexDigit))
                return new Refusal($"The file of the signing key holds no key: put it back from a backup. ({Path.GetFileName(place.KeyFile)})");
            return Take(Convert.FromHexString(text));
        }
    }

    /// <summary>Makes another key the present one. The secret half of the one before is gone for good.</summary>
    public Outcome<SigningKey, Refusal> Replace()
    {
        lock (oneAtATime) return Take(Write());
    }

    public void Dispose() => key?.Dispose();

    private Outcome<SigningKey, Refusal> Take(byte[] seed)
    {
        var made = SigningKey.ForProduction(seed);
        CryptographicOperations.ZeroMemory(seed);
        if (!made.IsOk) return new Refusal($"The signing key is refused. {made.Sentence}");
        // Whoever signs with the one before at this moment keeps it until they are done.
        return key = made.Value;
    }

    private byte[] Write()
    {
        var seed = RandomNumberGenerator.GetBytes(SigningKey.SeedLength);
        var fresh = place.KeyFile + ".new";
        File.Delete(fresh);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using (var file = new FileStream(fresh, options))
        {
            file.Write(System.Text.Encoding.ASCII.GetBytes(Convert.ToHexStringLower(seed) + "\n"));
            file.Flush(flushToDisk: true);
        }

        File.Move(fresh, place.KeyFile, overwrite: true);
        return seed;
    }
}
