namespace Training.Web.Features.Shared;

/// <summary>
/// The words of the interface. The English sentence is its own key; another language stands in a resource beside this
/// class, and what it lacks is shown in English.
/// </summary>
public sealed class Words;
