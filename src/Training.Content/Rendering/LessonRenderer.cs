using Training.Content.Modules;
using Training.Content.Scenarios;

namespace Training.Content.Rendering;

/// <summary>Makes HTML that is safe to show of lessons and situations.</summary>
/// <param name="library">What the lessons belong to.</param>
/// <param name="drawings">Where drawings and addresses come from.</param>
public sealed class LessonRenderer(ContentLibrary library, ILessonDrawings drawings)
{
    /// <summary>The library whose lessons are made into pages.</summary>
    public ContentLibrary Library => library;

    /// <summary>Where drawings and addresses come from.</summary>
    public ILessonDrawings Drawings => drawings;

    /// <summary>Makes the page of a module's lesson in a language; in the default language where there is no translation.</summary>
    /// <param name="module">The module.</param>
    /// <param name="language">The language that is wished for, such as <c>es</c>.</param>
    public LessonPage Render(Module module, string language) => throw new NotImplementedException();

    /// <summary>Makes HTML of a scenario's situation in a language; in the default language where there is no translation.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="language">The language that is wished for, such as <c>es</c>.</param>
    public string RenderSituation(Scenario scenario, string language) => throw new NotImplementedException();
}
