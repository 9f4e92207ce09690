using Training.Content.Glossary;
using Training.Content.Modules;
using Training.Sequencing.Procedures;

namespace Training.Content.Rendering;

/// <summary>What a lesson asks of the place where it is shown: drawings that are made from a procedure, and addresses.</summary>
public interface ILessonDrawings
{
    /// <summary>The line plan of a procedure, what must wait for what, as an SVG element with its own text alternative.</summary>
    /// <param name="procedure">The procedure, with its texts in the lesson's language.</param>
    /// <param name="variant">The kind of vehicle; null takes the first, where the procedure tells any apart.</param>
    /// <param name="language">The lesson's language.</param>
    string LinePlan(Procedure procedure, VariantId? variant, string language);

    /// <summary>The address of a picture of a module.</summary>
    /// <param name="module">The module.</param>
    /// <param name="path">The picture's path below the module's folder, such as <c>pictures/isolator.svg</c>.</param>
    /// <param name="language">The language that its labels are wanted in; null for the picture as it is.</param>
    string PictureAddress(ModuleId module, string path, string? language) => $"/modules/{module}/{path}{(language is null ? "" : $"?words={language}")}";

    /// <summary>The address of a word of the trade.</summary>
    /// <param name="term">The word.</param>
    string GlossaryAddress(TermId term) => $"/glossary#{term}";

    /// <summary>The address of a module's lesson.</summary>
    /// <param name="module">The module.</param>
    string LessonAddress(ModuleId module) => $"/modules/{module}";
}
