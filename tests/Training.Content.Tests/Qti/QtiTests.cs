using System.Text;
using System.Xml.Linq;
using CsCheck;
using Training.Content.Procedures;
using Training.Content.Qti;
using Training.Content.Scenarios;
using Training.Content.Tests.Shipped;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Content.Tests.Qti;

/// <summary>Order questions as items of 1EdTech QTI 3.0. Their names are held by <see cref="QtiNamesTests"/>.</summary>
public sealed class QtiTests
{
    private static readonly XNamespace Qti = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0";

    public static TheoryData<string> OrderScenarios =>
        [.. ShippedContent.Library.Scenarios.Where(scenario => scenario.Kinds.Contains(QuestionKind.Order)).Select(scenario => scenario.Id.Value)];

    [Theory]
    [MemberData(nameof(OrderScenarios))]
    public void What_goes_out_comes_back_with_the_same_steps_in_that_order(string id)
    {
        var (scenario, written) = Shipped(id);
        var order = QtiOrder.Read(QtiOrderItem.Write(scenario, written, "en")).Value;
        var files = QtiDraft.Of(order, _ => false);
        Assert.Equal([$"procedures/{id}.yaml", $"scenarios/{id}.md"], files.Select(file => file.Path));
        var procedure = ProcedureFile.Read(files[0]).Procedure!;
        var listed = Listed(scenario.JobOf(written).Procedure, scenario.Variant).ToArray();
        Assert.Equal(listed.Select(step => (step.Id, step.Do)), procedure.Steps.Select(step => (step.Id, step.Do)));
        Assert.Equal(listed.Length - 1, procedure.Rules.Count);
        // Right is that order and no other.
        var verdict = Grader.For(procedure).Value.Grade(new([.. listed.Select(step => new Entry(step.Id))])).Value;
        Assert.True(verdict.Accepted);
    }

    [Theory]
    [MemberData(nameof(OrderScenarios))]
    public void The_order_that_is_named_is_a_right_one(string id)
    {
        var (scenario, written) = Shipped(id);
        var named = QtiOrder.Read(QtiOrderItem.Write(scenario, written, "en")).Value.Right.Select(choice => new Entry(new(choice.Name.TrimStart('_'))));
        var grader = Grader.For(scenario.JobOf(written).Procedure, scenario.Variant).Value;
        var verdict = grader.Grade(new([.. named])).Value;
        // Waiting times are not in the item; with the least of them the order is right as it stands.
        Assert.Empty(verdict.Mend.Moves);
        Assert.Empty(verdict.Mend.Add);
        Assert.Empty(verdict.Mend.Drop);
    }

    [Fact]
    public void The_item_is_built_as_the_standard_has_it_and_says_what_it_cannot_hold()
    {
        var (scenario, written) = Shipped("customer-waiting");
        var document = XDocument.Load(new MemoryStream(QtiOrderItem.Write(scenario, written, "es")));
        Assert.Contains("names one right order", Assert.IsType<XComment>(document.FirstNode).Value, StringComparison.Ordinal);
        var root = document.Root!;
        Assert.Equal(Qti + "qti-assessment-item", root.Name);
        Assert.Equal("es", (string?)root.Attribute(XNamespace.Xml + "lang"));
        var declared = root.Element(Qti + "qti-response-declaration")!;
        Assert.Equal(("RESPONSE", "ordered", "identifier"), ((string?)declared.Attribute("identifier"), (string?)declared.Attribute("cardinality"), (string?)declared.Attribute("base-type")));
        var interaction = root.Element(Qti + "qti-item-body")!.Element(Qti + "qti-order-interaction")!;
        Assert.Equal("RESPONSE", (string?)interaction.Attribute("response-identifier"));
        Assert.Equal(
            declared.Element(Qti + "qti-correct-response")!.Elements(Qti + "qti-value").Select(value => value.Value),
            interaction.Elements(Qti + "qti-simple-choice").Select(choice => (string?)choice.Attribute("identifier")));
        var text = root.ToString();
        Assert.All(written.Procedure.Decoys, decoy => Assert.DoesNotContain($"\"{decoy.Id}\"", text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_standards_own_example_comes_in_with_its_right_order()
    {
        // Choices A, B, C; right is C, A, B. Its words are ours.
        var order = QtiOrder.Read(Item(["A", "B", "C"], ["C", "A", "B"])).Value;
        Assert.Equal(["C", "A", "B"], order.Right.Select(choice => choice.Name));
        Assert.Equal(["c", "a", "b"], ProcedureFile.Read(QtiDraft.Of(order, _ => false)[0]).Procedure!.Steps.Select(step => step.Id.Value));
    }

    [Fact]
    public void Every_rule_that_came_in_is_to_be_justified_before_it_can_be_published()
    {
        var file = QtiDraft.Of(QtiOrder.Read(Item(["A", "B", "C", "D"], ["C", "A", "B"])).Value, _ => false)[0];
        var problems = ProcedureFile.Check(file).Problems.Where(problem => problem.HoldsBack).ToList();
        // Two rules and the decoy that the order did not name, each with why and otherwise.
        Assert.Equal(6, problems.Count(problem => problem.Sentence.Contains("still to be justified", StringComparison.Ordinal)));
        var justified = file with { Text = file.Text.Replace("to be justified", "It is so", StringComparison.Ordinal) };
        Assert.DoesNotContain(ProcedureFile.Check(justified).Problems, problem => problem.HoldsBack);
    }

    [Fact]
    public void A_name_that_is_taken_gets_a_number() =>
        Assert.Equal("procedures/item-3.yaml", QtiDraft.Of(QtiOrder.Read(Item(["A", "B"], ["A", "B"])).Value, path => path is "procedures/item.yaml" or "scenarios/item-2.md")[0].Path);

    [Fact]
    public void Any_words_come_through_as_they_are() => Gen.String[1, 60].Where(text => text.Any(c => !char.IsWhiteSpace(c) && !char.IsControl(c))).Array[1, 6].Sample(words =>
    {
        string[] names = [.. words.Select((_, place) => $"n{place}")];
        var sound = words.Select(word => string.Concat(word.Where(System.Xml.XmlConvert.IsXmlChar))).ToArray();
        if (sound.Any(string.IsNullOrWhiteSpace)) return;
        var read = QtiOrder.Read(Item(names, names, sound));
        if (!read.IsOk) return;
        var reading = ProcedureFile.Read(QtiDraft.Of(read.Value, _ => false)[0]);
        if (reading.Procedure is null) Assert.Contains(reading.Problems, problem => problem.Sentence.Contains("UTF-8", StringComparison.Ordinal) || problem.Sentence.Contains("control", StringComparison.Ordinal));
        else Assert.Equal(read.Value.Right.Select(choice => choice.Text), reading.Procedure.Steps.Select(step => step.Do));
    }, iter: 2_000);

    [Theory]
    [InlineData("", "no item|sound XML")]
    [InlineData("<a/>", "no item of QTI")]
    [InlineData("<!DOCTYPE a [<!ENTITY b \"c\">]><a>&b;</a>", "document type")]
    [InlineData("<!DOCTYPE a [<!ENTITY a0 \"ha\"><!ENTITY a1 \"&a0;&a0;&a0;&a0;\"><!ENTITY a2 \"&a1;&a1;&a1;&a1;\">]><a>&a2;</a>", "document type")]
    [InlineData("<!DOCTYPE a SYSTEM \"file:///etc/passwd\"><a/>", "document type")]
    [InlineData("<a>&unknown;</a>", "sound XML")]
    [InlineData("<qti-assessment-item xmlns=\"http://www.imsglobal.org/xsd/imsqtiasi_v3p0\"/>", "asks for one order")]
    public void What_is_no_question_of_order_is_refused(string xml, string sentence) =>
        Assert.Matches(sentence, QtiOrder.Read(Encoding.UTF8.GetBytes(xml)).Fault.Sentence);

    [Fact]
    public void Orders_that_cannot_be_meant_are_refused()
    {
        Assert.Contains("names something twice", QtiOrder.Read(Item(["A", "B"], ["A", "A"])).Fault.Sentence, StringComparison.Ordinal);
        Assert.Contains("does not offer", QtiOrder.Read(Item(["A", "B"], ["A", "C"])).Fault.Sentence, StringComparison.Ordinal);
        Assert.Contains("which order is right", QtiOrder.Read(Item(["A", "B"], [])).Fault.Sentence, StringComparison.Ordinal);
        Assert.Contains("have one name", QtiOrder.Read(Item(["A", "A"], ["A"])).Fault.Sentence, StringComparison.Ordinal);
        Assert.Contains("no words", QtiOrder.Read(Item(["A", "B"], ["A", "B"], ["a", " "])).Fault.Sentence, StringComparison.Ordinal);
        Assert.Contains("more than 200", QtiOrder.Read(Item([.. Enumerable.Range(0, 201).Select(i => $"n{i}")], ["n0"])).Fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_too_large_or_too_deep_is_refused()
    {
        Assert.Contains("256 KiB", QtiOrder.Read(new byte[QtiOrder.LargestSize + 1]).Fault.Sentence, StringComparison.Ordinal);
        var deep = string.Concat(Enumerable.Repeat("<a>", 5_000)) + string.Concat(Enumerable.Repeat("</a>", 5_000));
        Assert.Contains("too deep", QtiOrder.Read(Encoding.UTF8.GetBytes(deep)).Fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_situation_is_what_the_body_tells_before_it_asks()
    {
        // The shapes are those of the standard's examples (see QtiNamesTests): a block with text of its own and a line break,
        // a block around the question, a prompt of paragraphs, and feedback in the body and behind it. The words are ours.
        var item = Item(["A", "B"], ["B", "A"], body: interaction => new XElement(Qti + "qti-item-body",
            new XElement(Qti + "div", "The bus stands", new XElement(Qti + "br"), "on the apron."),
            new XElement(Qti + "p", "Its key is out. ", new XElement(Qti + "qti-feedback-inline", "That was right.")),
            new XElement(Qti + "qti-rubric-block", new XElement(Qti + "p", "One point for each.")),
            new XElement(Qti + "div", interaction)));
        var document = XDocument.Parse(Encoding.UTF8.GetString(item));
        document.Descendants(Qti + "qti-order-interaction").Single().AddFirst(new XElement(Qti + "qti-prompt", new XElement(Qti + "p", "What comes first?")));
        document.Root!.Add(new XElement(Qti + "qti-modal-feedback", new XElement(Qti + "p", "B comes first.")));
        var order = QtiOrder.Read(Encoding.UTF8.GetBytes(document.ToString())).Value;
        Assert.Equal(["The bus stands on the apron.", "Its key is out."], order.Situation);
        document.Root.SetAttributeValue("title", null);
        Assert.Equal("What comes first?", QtiOrder.Read(Encoding.UTF8.GetBytes(document.ToString())).Value.Title);
    }

    [Fact]
    public void A_choice_with_a_formula_is_refused_and_not_brought_in_as_a_jumble()
    {
        var document = XDocument.Parse(Encoding.UTF8.GetString(Item(["A", "B"], ["A", "B"])));
        document.Descendants(Qti + "qti-simple-choice").First().Add(new XElement(XNamespace.Get("http://www.w3.org/1998/Math/MathML") + "math", "x"));
        Assert.Contains("has a formula", QtiOrder.Read(Encoding.UTF8.GetBytes(document.ToString())).Fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Signs_that_XML_writes_out_come_in_as_they_are_meant() =>
        Assert.Equal("a & b < c", QtiOrder.Read(Item(["A"], ["A"], ["a & b < c"])).Value.Right[0].Text);

    [Fact]
    public void Bytes_that_were_changed_anywhere_are_taken_or_refused_with_a_sentence()
    {
        var (scenario, written) = Shipped("customer-waiting");
        var original = QtiOrderItem.Write(scenario, written, "en");
        Gen.Select(Gen.Int[0, original.Length - 1], Gen.Byte).Array[1, 6].Sample(changes =>
        {
            var bytes = original.ToArray();
            foreach (var (at, value) in changes) bytes[at] = value;
            var read = QtiOrder.Read(bytes);
            if (!read.IsOk) Assert.NotEmpty(read.Fault.Sentence);
            else Assert.NotEmpty(QtiDraft.Of(read.Value, _ => false));
        }, iter: 10_000);
    }

    private static (Scenario Scenario, WrittenProcedure Procedure) Shipped(string id)
    {
        var scenario = ShippedContent.Library.FindScenario(new(id))!;
        return (scenario, ShippedContent.Library.FindProcedure(scenario.Procedure!.Value)!);
    }

    private static IEnumerable<Step> Listed(Procedure procedure, VariantId? variant)
    {
        HashSet<ChoiceId> chosen = [];
        foreach (var step in procedure.Steps)
        {
            if (step.Variants.Count > 0 && !step.Variants.Contains(variant ?? procedure.Variants[0])) continue;
            if (step.Choice is { } choice ? chosen.Add(choice) : !step.IsOptional) yield return step;
        }
    }

    private static byte[] Item(
        IReadOnlyList<string> choices, IReadOnlyList<string> right, IReadOnlyList<string>? words = null, Func<XElement, XElement>? body = null)
    {
        var interaction = new XElement(Qti + "qti-order-interaction",
            new XAttribute("response-identifier", "RESPONSE"), new XAttribute("shuffle", "true"),
            choices.Select((name, place) => new XElement(Qti + "qti-simple-choice", new XAttribute("identifier", name), words?[place] ?? $"Do {name}")));
        return Encoding.UTF8.GetBytes(new XDocument(new XElement(Qti + "qti-assessment-item",
            new XAttribute("identifier", "item"), new XAttribute("title", "Put them in order"),
            new XElement(Qti + "qti-response-declaration",
                new XAttribute("identifier", "RESPONSE"), new XAttribute("cardinality", "ordered"), new XAttribute("base-type", "identifier"),
                new XElement(Qti + "qti-correct-response", right.Select(name => new XElement(Qti + "qti-value", name)))),
            body?.Invoke(interaction) ?? new XElement(Qti + "qti-item-body", interaction))).ToString());
    }
}
