using System.Buffers.Text;
using System.IO.Compression;
using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Mvc.ViewFeatures;

namespace Training.Web.Features.Shared;

/// <summary>
/// A form that was not taken: where it was sent, what was typed, what is wrong and which field is. The page that is shown
/// next fills the form again and says the sentence beside the field (<see cref="FormTag"/>); where the page has no such
/// form, its head says the sentence.
/// </summary>
/// <param name="Method">GET or POST.</param>
/// <param name="Address">Where the form was sent.</param>
/// <param name="Sentence">What is wrong, in the reader's language.</param>
/// <param name="Field">The name or the id of the field that is wrong; null where it is not one field.</param>
/// <param name="Typed">What was typed, by the names of the fields; never a password.</param>
public sealed record RejectedForm(string Method, string Address, string Sentence, string? Field, IReadOnlyDictionary<string, string[]> Typed)
{
    // It travels in a cookie, whose size servers on the way bound. A longer text is rare, and only its sentence goes on.
    private const int MostTravelling = 6000;
    private const string Travelling = "rejected";

    /// <summary>Whether the page shows the form as it was answered at once, not after leading elsewhere.</summary>
    [JsonIgnore]
    public bool IsAtOnce { get; init; }

    /// <summary>Whether some form of the page has said the sentence.</summary>
    [JsonIgnore]
    public bool IsSaid { get; set; }

    /// <summary>The form that the request sent.</summary>
    /// <param name="context">The request.</param>
    /// <param name="sentence">What is wrong.</param>
    /// <param name="field">The field that is wrong, if it is one.</param>
    public static RejectedForm From(HttpContext context, string sentence, string? field)
    {
        ArgumentNullException.ThrowIfNull(context);
        var request = context.Request;
        var sent = request.HasFormContentType ? request.Form.AsEnumerable() : request.Query;
        return new(request.Method, request.Path.Value ?? "", sentence, field, sent
            .Where(part => part.Key != "form-token" && !part.Key.Contains("password", StringComparison.OrdinalIgnoreCase))
            .ToDictionary(part => part.Key, part => part.Value.Select(value => value ?? "").ToArray(), StringComparer.OrdinalIgnoreCase));
    }

    /// <summary>Keeps it for the page that this request is answered with.</summary>
    /// <param name="context">The request.</param>
    public void ShowIn(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        context.Items[typeof(RejectedForm)] = this with { IsAtOnce = true };
    }

    /// <summary>Keeps it for the page that is opened next.</summary>
    /// <param name="next">What is kept for that page.</param>
    public void ShowNext(ITempDataDictionary next)
    {
        ArgumentNullException.ThrowIfNull(next);
        var isLong = Typed.Sum(part => part.Key.Length + part.Value.Sum(value => value.Length)) > MostTravelling;
        using var packed = new MemoryStream();
        using (var packing = new BrotliStream(packed, CompressionLevel.Optimal))
            JsonSerializer.Serialize(packing, isLong ? this with { Typed = new Dictionary<string, string[]>() } : this);
        next[Travelling] = Base64Url.EncodeToString(packed.ToArray());
    }

    /// <summary>The form that was rejected before this page is shown; null where none was.</summary>
    /// <param name="context">The request.</param>
    public static RejectedForm? Of(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (context.Items.TryGetValue(typeof(RejectedForm), out var known)) return known as RejectedForm;
        var kept = context.RequestServices.GetRequiredService<ITempDataDictionaryFactory>().GetTempData(context)[Travelling] as string;
        RejectedForm? rejected = null;
        if (kept is not null)
        {
            using var unpacking = new BrotliStream(new MemoryStream(Base64Url.DecodeFromChars(kept)), CompressionMode.Decompress);
            rejected = JsonSerializer.Deserialize<RejectedForm>(unpacking);
            rejected = rejected! with { Typed = new Dictionary<string, string[]>(rejected.Typed, StringComparer.OrdinalIgnoreCase) };
        }

        context.Items[typeof(RejectedForm)] = rejected;
        return rejected;
    }

    /// <summary>Whether a field is the one that is wrong.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="id">Its id, if it has one.</param>
    public bool IsAbout(string? name, string? id) =>
        Field is not null && (Field.Equals(name, StringComparison.OrdinalIgnoreCase) || Field.Equals(id, StringComparison.OrdinalIgnoreCase));
}
