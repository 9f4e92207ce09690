namespace Training.Web.Features.Shared;

/// <summary>The address of a proof, as it is given to a customer.</summary>
/// <param name="configuration">May name the address that the house is reached by from outside (<c>Provider:Address</c>).</param>
/// <param name="accessor">The request, whose own address counts where none is named.</param>
public sealed class ProofLink(IConfiguration configuration, IHttpContextAccessor accessor)
{
    /// <summary>The whole address.</summary>
    /// <param name="token">The proof's token.</param>
    public string To(string token)
    {
        var request = accessor.HttpContext?.Request;
        var house = configuration["Provider:Address"]?.TrimEnd('/') ?? $"{request?.Scheme}://{request?.Host}";
        return $"{house}/p/{token}";
    }
}
