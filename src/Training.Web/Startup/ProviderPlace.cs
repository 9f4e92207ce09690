using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Training.Records.Issuers;
using Training.Sequencing;

namespace Training.Web.Startup;

/// <summary>
/// Where the provider is reached from outside, by which it signs. In Development the server's own port on localhost will
/// do; anywhere else it must be said, because whoever checks a proof has to find the keys there.
/// </summary>
public sealed class ProviderPlace(IConfiguration configuration, IHostEnvironment environment, IServer server)
{
    /// <summary>The address, or what to do so that something can be signed.</summary>
    public Outcome<ProviderAddress, Refusal> Address()
    {
        if (configuration["Provider:Address"] is { Length: > 0 } named) return ProviderAddress.Read(named);
        if (!environment.IsDevelopment())
        {
            return new Refusal(
                "Nothing can be signed yet: the setting Provider:Address is missing. Set it to the address by which this server is reached from outside, such as https://training.example.org.");
        }

        var own = server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault();
        return ProviderAddress.Read(Uri.TryCreate(own, UriKind.Absolute, out var address) ? $"https://localhost:{address.Port}" : "https://localhost");
    }
}
