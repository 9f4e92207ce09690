namespace Training.Web.Features.Shared;

/// <summary>Whole addresses that are given out of the house: to a customer, or to a calendar.</summary>
/// <param name="configuration">May name the address that the house is reached by from outside (<c>Provider:Address</c>).</param>
/// <param name="accessor">The request, whose own address counts where none is named.</param>
public sealed class ProofLink(IConfiguration configuration, IHttpContextAccessor accessor)
{
    /// <summary>The whole address of a proof.</summary>
    /// <param name="token">The proof's token.</param>
    public string To(string token) => $"{House}/p/{token}";

    /// <summary>The whole address of an owner's calendar.</summary>
    /// <param name="secret">The secret of the address.</param>
    public string ToCalendar(string secret) => $"{House}/calendar/{secret}.ics";

    private string House => configuration["Provider:Address"]?.TrimEnd('/')
        ?? $"{accessor.HttpContext?.Request.Scheme}://{accessor.HttpContext?.Request.Host}";
}
