using Training.Proofs.Signing;
using Training.Sequencing;

namespace Training.Records.Issuers;

/// <summary>Where the provider is reached from outside, and the identifier that it has by that (did:web).</summary>
/// <param name="Base">The address, without a slash at its end.</param>
/// <param name="Did">The identifier.</param>
public sealed record ProviderAddress(string Base, DidWeb Did)
{
    /// <summary>Reads an address such as <c>https://training.example.org</c>; a path may follow, a bare IP address may not be.</summary>
    /// <param name="text">The address.</param>
    public static Outcome<ProviderAddress, Refusal> Read(string? text)
    {
        if (!Uri.TryCreate(text?.Trim(), UriKind.Absolute, out var address) || address.Scheme != Uri.UriSchemeHttps
            || address.Query.Length > 0 || address.Fragment.Length > 0 || address.UserInfo.Length > 0)
            return new Refusal($"The setting Provider:Address is “{text}”; write an address that begins with https://.");
        var path = address.AbsolutePath.Split('/', StringSplitOptions.RemoveEmptyEntries);
        var did = DidWeb.For(address.IdnHost.ToLowerInvariant(), address.IsDefaultPort ? null : address.Port, path);
        return did.IsOk
            ? new ProviderAddress(address.GetLeftPart(UriPartial.Path).TrimEnd('/'), did.Value)
            : new Refusal($"The setting Provider:Address cannot be used: {did.Sentence}");
    }
}

/// <summary>What the records must know of the house that they stand in to sign what they prove.</summary>
/// <param name="Name">The provider's name.</param>
/// <param name="KeyFile">The file of the signing key.</param>
/// <param name="Address">Where the provider is reached, or why nothing can be signed yet.</param>
public sealed record IssuerPlace(string Name, string KeyFile, Func<Outcome<ProviderAddress, Refusal>> Address);
