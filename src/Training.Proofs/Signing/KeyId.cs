namespace Training.Proofs.Signing;

/// <summary>
/// Which key of whom: a DID URL such as <c>did:web:example.com#z6Mk…</c>. Our own keys are named by their Multikey,
/// so that a name can never come to mean another key.
/// </summary>
public readonly record struct KeyId
{
    private KeyId(string value) => Value = value;

    /// <summary>The whole DID URL.</summary>
    public string Value { get; }

    /// <summary>Whose key it is: the part before the hash sign.</summary>
    public string Controller => Value[..Value.IndexOf('#', StringComparison.Ordinal)];

    /// <summary>The name of a key of ours.</summary>
    public static KeyId For(DidWeb controller, Ed25519PublicKey key)
    {
        ArgumentNullException.ThrowIfNull(controller);
        ArgumentNullException.ThrowIfNull(key);
        return new($"{controller}#{key.Multikey}");
    }

    /// <summary>Reads a DID URL with a fragment, of any method.</summary>
    public static Outcome<KeyId> Parse(string? text)
    {
        int hash = text?.IndexOf('#', StringComparison.Ordinal) ?? -1;
        return text is { Length: <= 1024 } && text.StartsWith("did:", StringComparison.Ordinal)
            && hash > 4 && hash < text.Length - 1 && text.LastIndexOf('#') == hash
                ? new KeyId(text)
                : new Refused("A key is named by a DID, a hash sign and the key's own name.");
    }

    /// <inheritdoc/>
    public override string ToString() => Value;
}
