using Training.Records.Accounts;
using Training.Records.Interchange;

namespace Training.Web.Features.PeopleFiles;

/// <summary>The form for a file of people, and what the file would bring.</summary>
/// <param name="Form">What was typed or chosen.</param>
/// <param name="Shops">The shops to choose from; null for an owner, whose own it is.</param>
public sealed record PeopleFilePage(PeopleFileForm Form, IReadOnlyList<ShopView>? Shops)
{
    /// <summary>What it would bring; null before anybody looked.</summary>
    public PeoplePreview? Preview { get; init; }
}

/// <summary>A file of people as it is sent.</summary>
public sealed class PeopleFileForm
{
    /// <summary>The file.</summary>
    public IFormFile? File { get; init; }

    /// <summary>The text of the file, typed or as it was looked at.</summary>
    public string? Text { get; set; }

    /// <summary>The shop that the people belong to.</summary>
    public Guid? Shop { get; init; }

    /// <summary>The hash of the text that was looked at.</summary>
    public string? Hash { get; init; }

    /// <summary>The key of the form that takes them in; sent twice, it is answered alike.</summary>
    public Guid? Key { get; init; }
}
