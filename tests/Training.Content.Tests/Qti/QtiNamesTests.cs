using System.Xml;
using System.Xml.Linq;
using Training.Content.Qti;
using Training.Content.Scenarios;
using Training.Content.Tests.Shipped;

namespace Training.Content.Tests.Qti;

/// <summary>
/// An item says nothing in names that QTI 3.0 does not have. Checked on 2026-11-25 against the examples that 1EdTech
/// publishes with the standard (github.com/1EdTech/qti-examples, read and not copied): QTI3_BPIG_Examples/items/QTI3-order.xml
/// and Order_RTL_Hebrew.xml (commit 9811473) for everything but the attribute shuffle of an order interaction, which is from
/// packaging/BBQsTest/id-e475c3c922f6/order-maths.xml (commit f2a5c35). That time-dependent must be there and adaptive need
/// not is how the examples have it. The schema itself could not be read; that an identifier is an NCName is from memory.
/// </summary>
public sealed class QtiNamesTests
{
    private const string Namespace = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0";
    private static readonly XName Language = XNamespace.Xml + "lang";

    // An element, the attributes that it always has, those that it may have, and its children in their order.
    private static readonly Dictionary<string, (string[] Always, string[] Maybe, string[] Children)> Known = new()
    {
        ["qti-assessment-item"] = (["identifier", "title", "time-dependent"], ["adaptive", "lang"],
            ["qti-response-declaration", "qti-outcome-declaration", "qti-item-body", "qti-response-processing"]),
        ["qti-response-declaration"] = (["identifier", "cardinality", "base-type"], [], ["qti-correct-response"]),
        ["qti-correct-response"] = ([], [], ["qti-value"]),
        ["qti-value"] = ([], [], []),
        ["qti-outcome-declaration"] = (["identifier", "cardinality", "base-type"], [], []),
        ["qti-item-body"] = ([], [], ["p", "qti-order-interaction"]),
        ["p"] = ([], [], []),
        ["qti-order-interaction"] = (["response-identifier"], ["shuffle", "orientation"], ["qti-prompt", "qti-simple-choice"]),
        ["qti-prompt"] = ([], [], []),
        ["qti-simple-choice"] = (["identifier"], [], []),
        ["qti-response-processing"] = (["template"], [], []),
    };

    public static TheoryData<string, string> Items =>
    [
        .. from scenario in ShippedContent.Library.Scenarios
           where scenario.Kinds.Contains(QuestionKind.Order)
           from language in new[] { "en", "es", "hi" }
           select new TheoryDataRow<string, string>(scenario.Id.Value, language),
    ];

    [Theory]
    [MemberData(nameof(Items))]
    public void Every_element_and_attribute_is_one_of_the_standard_and_stands_in_its_place(string id, string language)
    {
        var root = Written(id, language);
        foreach (var element in root.DescendantsAndSelf())
        {
            Assert.Equal(Namespace, element.Name.NamespaceName);
            var (always, maybe, children) = Assert.Contains(element.Name.LocalName, (IDictionary<string, (string[], string[], string[])>)Known);
            var names = element.Attributes().Where(attribute => !attribute.IsNamespaceDeclaration).Select(attribute => attribute.Name).ToList();
            Assert.All(names, name => Assert.True(name == Language || name.NamespaceName.Length == 0));
            Assert.Subset(always.Concat(maybe).ToHashSet(), names.Select(name => name.LocalName).ToHashSet());
            Assert.Superset(always.ToHashSet(), names.Select(name => name.LocalName).ToHashSet());
            int[] places = [.. element.Elements().Select(child => Array.IndexOf(children, child.Name.LocalName))];
            Assert.All(places, place => Assert.NotEqual(-1, place));
            Assert.Equal(places.Order(), places);
        }
    }

    [Theory]
    [MemberData(nameof(Items))]
    public void What_is_named_is_there_and_every_name_can_be_one(string id, string language)
    {
        var root = Written(id, language);
        XNamespace qti = Namespace;
        string[] choices = [.. root.Descendants(qti + "qti-simple-choice").Select(choice => choice.Attribute("identifier")!.Value)];
        Assert.Equal(choices.Distinct(), choices);
        // An order interaction asks for all choices, so the right order names each once.
        Assert.Equal(choices.Order(), root.Descendants(qti + "qti-value").Select(value => value.Value).Order());
        Assert.Equal(
            root.Element(qti + "qti-response-declaration")!.Attribute("identifier")!.Value,
            root.Descendants(qti + "qti-order-interaction").Single().Attribute("response-identifier")!.Value);
        Assert.All(root.DescendantsAndSelf().Attributes("identifier"), name => XmlConvert.VerifyNCName(name.Value));
        Assert.Equal(("false", "false"), ((string?)root.Attribute("adaptive"), (string?)root.Attribute("time-dependent")));
    }

    [Fact]
    public void The_scoring_is_the_standards_own_for_a_right_order_named_whole() => Assert.Equal(
        "https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/match_correct.xml",
        (string?)Written("customer-waiting", "en").Elements().Last().Attribute("template"));

    private static XElement Written(string id, string language)
    {
        var scenario = ShippedContent.Library.FindScenario(new(id))!;
        var bytes = QtiOrderItem.Write(scenario, ShippedContent.Library.FindProcedure(scenario.Procedure!.Value)!, language);
        return XDocument.Load(new MemoryStream(bytes)).Root!;
    }
}
