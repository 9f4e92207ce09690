namespace Training.Proofs.Signing;

/// <summary>
/// The keys that the one who checks has reason to trust. Proofs are checked with these alone; key material that
/// stands in a checked document is never looked at.
/// </summary>
public sealed class KeyRing
{
    private readonly Dictionary<KeyId, IssuerKey> keys;

    /// <summary>Gathers keys, of one owner or of several.</summary>
    /// <exception cref="ArgumentException">Two keys bear one name.</exception>
    public KeyRing(IEnumerable<IssuerKey> keys) => this.keys = keys.ToDictionary(key => key.Id);

    /// <summary>No keys.</summary>
    public static KeyRing Empty { get; } = new([]);

    /// <summary>The keys.</summary>
    public IReadOnlyCollection<IssuerKey> Keys => keys.Values;

    /// <summary>The key of that name, or null.</summary>
    public IssuerKey? Find(KeyId id) => keys.GetValueOrDefault(id);

    /// <summary>Whether any key of that owner is known.</summary>
    /// <param name="controller">A DID.</param>
    public bool Knows(string controller) => keys.Keys.Any(id => id.Controller == controller);

    /// <summary>These keys and those of another ring; where both have a key, the other's word on it stands.</summary>
    public KeyRing With(KeyRing other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new(keys.Values.Where(key => other.Find(key.Id) is null).Concat(other.Keys));
    }
}
