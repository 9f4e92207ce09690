using Training.Content;
using Training.Content.Competencies;

namespace Training.Web.Features.Shared;

/// <summary>What a competency asks, in a language.</summary>
/// <param name="Competency">The competency.</param>
/// <param name="Content">The content that it stands in, for the names of modules and procedures.</param>
/// <param name="Language">The language, of the titles and of what is said around them.</param>
public sealed record CompetencyView(Competency Competency, ContentLibrary Content, string Language);
