using System.Text;
using System.Xml;
using Markdig.Syntax;
using Training.Content.Procedures;
using Training.Content.Rendering;
using Training.Content.Scenarios;
using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Qti;

/// <summary>
/// Writes an order question as an item of 1EdTech QTI 3.0 with an order interaction. What such an item cannot hold is said
/// in it: it names one right order where there are many, asks for no waiting times, and has neither rules nor decoys. See
/// <c>docs/qti.md</c>.
/// </summary>
public static class QtiOrderItem
{
    internal const string Namespace = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0";
    private const string MatchCorrect = "https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/match_correct.xml";

    /// <summary>What the item cannot hold, as it stands in it.</summary>
    public const string Limits =
        "This item names one right order, that of the procedure's listing. Other orders can be right, too: the rules that say which are not in it. "
        + "Optional steps, other ways to do a step, waiting times and what is never right are not in it either.";

    /// <summary>The item as XML in UTF-8.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="procedure">Its procedure.</param>
    /// <param name="language">The language; the default language where there is no translation.</param>
    public static byte[] Write(Scenario scenario, WrittenProcedure procedure, string language)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(language);
        var (text, job) = (scenario.In(language), scenario.JobOf(procedure).In(language));
        var steps = Listed(job, scenario.Variant ?? job.Variants.Cast<VariantId?>().FirstOrDefault()).ToArray();
        using var bytes = new MemoryStream();
        using (var xml = XmlWriter.Create(bytes, new() { Encoding = new UTF8Encoding(false), Indent = true, NewLineChars = "\n" }))
        {
            xml.WriteComment($" {Limits} ");
            xml.WriteStartElement("qti-assessment-item", Namespace);
            xml.WriteAttributeString("identifier", Identifier(scenario.Id.Value));
            xml.WriteAttributeString("title", text.Title);
            xml.WriteAttributeString("adaptive", "false");
            xml.WriteAttributeString("time-dependent", "false");
            xml.WriteAttributeString("xml", "lang", null, text.Language);
            Declare(xml, steps);
            xml.WriteStartElement("qti-item-body", Namespace);
            foreach (var paragraph in Situation(text.File)) xml.WriteElementString("p", Namespace, paragraph);
            xml.WriteStartElement("qti-order-interaction", Namespace);
            xml.WriteAttributeString("response-identifier", "RESPONSE");
            xml.WriteAttributeString("shuffle", "true");
            xml.WriteElementString("qti-prompt", Namespace, job.Title);
            foreach (var step in steps)
            {
                xml.WriteStartElement("qti-simple-choice", Namespace);
                xml.WriteAttributeString("identifier", Identifier(step.Id.Value));
                xml.WriteString(step.Do);
                xml.WriteEndElement();
            }

            xml.WriteEndElement();
            xml.WriteEndElement();
            xml.WriteStartElement("qti-response-processing", Namespace);
            xml.WriteAttributeString("template", MatchCorrect);
            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        return bytes.ToArray();
    }

    private static void Declare(XmlWriter xml, IReadOnlyList<Step> steps)
    {
        xml.WriteStartElement("qti-response-declaration", Namespace);
        xml.WriteAttributeString("identifier", "RESPONSE");
        xml.WriteAttributeString("cardinality", "ordered");
        xml.WriteAttributeString("base-type", "identifier");
        xml.WriteStartElement("qti-correct-response", Namespace);
        foreach (var step in steps) xml.WriteElementString("qti-value", Namespace, Identifier(step.Id.Value));
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteStartElement("qti-outcome-declaration", Namespace);
        xml.WriteAttributeString("identifier", "SCORE");
        xml.WriteAttributeString("cardinality", "single");
        xml.WriteAttributeString("base-type", "float");
        xml.WriteEndElement();
    }

    /// <summary>The right order of the listing: every step that must be done, and the first way of each choice.</summary>
    internal static IEnumerable<Step> Listed(Procedure procedure, VariantId? variant)
    {
        HashSet<ChoiceId> chosen = [];
        return procedure.StepsFor(variant).Where(step => step.Choice is { } choice ? chosen.Add(choice) : !step.IsOptional);
    }

    // An identifier must not begin with a digit or a hyphen (it is an NCName); ours may, and then have an underline before them.
    private static string Identifier(string id) => char.IsAsciiLetterLower(id[0]) ? id : "_" + id;

    private static IEnumerable<string> Situation(ContentFile file) =>
        LessonMarkdown.Parse(FrontMatter.Read(file, new(file.Path)).Body)?.Descendants<LeafBlock>()
            .Select(block => LessonMarkdown.PlainText(block.Inline)).Where(text => text.Length > 0) ?? [];
}
