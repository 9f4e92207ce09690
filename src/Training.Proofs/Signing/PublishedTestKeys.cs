namespace Training.Proofs.Signing;

/// <summary>Keys whose secret halves stand in public documents. Production must never sign with one of them.</summary>
internal static class PublishedTestKeys
{
    private static readonly HashSet<string> PublicKeys =
    [
        // RFC 8032, section 7.1: tests 1, 2, 3, 1024 and SHA(abc). RFC 8037, appendix A, uses the first again.
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
        "278117fc144c72340f67d0f2316e8386ceffbf2b2428c9c51fef7c597f1d426e",
        "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf",
        // W3C Data Integrity EdDSA Cryptosuites 1.0, appendix B: z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2.
        "b00d8d938e7f773d51565aad36a623f5344f7f5d1960f9cf3e8e12620ea2810f",
        // The seed 00 01 02 … 1f, which many programs' examples use.
        "03a107bff3ce10be1d70dd18e74bc09967e4d6309ba50d5f1ddc8664125531b8",
    ];

    /// <summary>Whether the key is one of them.</summary>
    public static bool Contains(Ed25519PublicKey key) => PublicKeys.Contains(Convert.ToHexStringLower(key.Bytes));
}
