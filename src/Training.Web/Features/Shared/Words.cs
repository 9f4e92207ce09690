namespace Training.Web.Features.Shared;

/// <summary>
/// The words of the interface. The English sentence is its own key; the words of another language stand beside this
/// class, as <c>Words.es.json</c>, and what is missing there is shown in English.
/// </summary>
public sealed class Words;
