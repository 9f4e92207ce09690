using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Localization;
using Training.Web.Features.Shared;

namespace Training.Web.Startup;

/// <summary>How many fields a form may have that has more than most.</summary>
/// <param name="fields">How many.</param>
[AttributeUsage(AttributeTargets.Method)]
public sealed class FieldsAtMostAttribute(int fields) : Attribute
{
    /// <summary>How many.</summary>
    public int Fields => fields;
}

/// <summary>
/// Reads a form before anything is done with it. One that is too large, or that no browser sends so, is the sender's fault
/// and is told as one; further in, the same would look like a fault of ours.
/// </summary>
internal static class ReadableForms
{
    private const char Nul = '\0';

    public static IApplicationBuilder UseReadableForms(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        if (await WhatIsWrong(context) is not { } code)
        {
            await next();
            return;
        }

        // The page that says so must not read the form once more.
        context.Features.Set<IFormFeature>(new FormFeature(FormCollection.Empty));
        context.Response.StatusCode = code;
    });

    private static async Task<int?> WhatIsWrong(HttpContext context)
    {
        var request = context.Request;
        if (context.GetEndpoint()?.Metadata.GetMetadata<FieldsAtMostAttribute>() is { } most && request.HasFormContentType)
            context.Features.Set<IFormFeature>(new FormFeature(request, new FormOptions { ValueCountLimit = most.Fields }));
        try
        {
            if (!HoldsNul(request.Query.Select(part => part.Value.ToString()))
                && !(request.HasFormContentType && HoldsNul((await request.ReadFormAsync(context.RequestAborted)).Select(part => part.Key + part.Value)))) return null;
        }
        catch (BadHttpRequestException fault)
        {
            return fault.StatusCode;
        }
        catch (InvalidDataException fault) when (fault.InnerException is not InvalidOperationException)
        {
            // More fields, or longer names or parts, than a form of this house has.
            return StatusCodes.Status400BadRequest;
        }
        catch (InvalidDataException)
        {
            // The reader of forms itself found a NUL.
        }

        context.Items[Refusing.SentenceKey] = context.RequestServices.GetRequiredService<IStringLocalizer<Words>>()[
            "What you sent holds a sign that is no letter (NUL) and that cannot be kept. Nothing was changed: go back, take it out and send it again."].Value;
        return StatusCodes.Status400BadRequest;
    }

    // Databases and files end a text there, each in its own way.
    private static bool HoldsNul(IEnumerable<string> texts) => texts.Any(text => text.Contains(Nul, StringComparison.Ordinal));
}
