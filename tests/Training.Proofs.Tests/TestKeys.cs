using System.Security.Cryptography;
using System.Text;
using Training.Proofs.Signing;

namespace Training.Proofs.Tests;

/// <summary>Keys and people of the invented world, the same in every run.</summary>
internal static class TestKeys
{
    public static readonly DidWeb Eastvale = DidWeb.For("eastvale.example").Value;

    public static readonly DateTimeOffset Now = new(2026, 3, 1, 8, 0, 0, TimeSpan.Zero);

    public static SigningKey Key(string name) => SigningKey.FromSeed(SHA256.HashData(Encoding.UTF8.GetBytes(name)));

    public static byte[] Salt(string name) => SHA256.HashData(Encoding.UTF8.GetBytes("salt of " + name))[..16];

    public static KeyRing Ring(params SigningKey[] keys) =>
        new(keys.Select(key => new IssuerKey(KeyId.For(Eastvale, key.PublicKey), key.PublicKey)));
}
