using System.ComponentModel;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Training.Measures;
using Training.Sequencing;

namespace Training.Web.Tests.WordBooks;

/// <summary>
/// Every sentence for people that the source holds, read from the source itself: what the words of the interface are
/// asked for (<c>W["…"]</c>), what is made into a sentence or a phrase, and what is handed to or given back by
/// something that is marked as localizable.
/// </summary>
internal static partial class SourceWords
{
    private static readonly string[] Projects = ["Training.Sequencing", "Training.Measures", "Training.Content", "Training.Records", "Training.Web"];

    private static readonly string Source = Path.Combine(Root(), "src");

    /// <summary>The sentences, each with a place where it stands.</summary>
    public static IReadOnlyDictionary<string, string> All { get; } = Read();

    private static SortedDictionary<string, string> Read()
    {
        SortedDictionary<string, string> found = new(StringComparer.Ordinal);
        foreach (var file in Files(".cshtml"))
            foreach (Match asked in Asked().Matches(File.ReadAllText(file)))
                found.TryAdd(Regex.Unescape(asked.Groups[1].Value), Path.GetRelativePath(Source, file));
        var trees = Files(".cs").Select(file => CSharpSyntaxTree.ParseText(File.ReadAllText(file), path: file)).ToList();
        // What the compiler adds to each file by itself in these projects.
        trees.Add(CSharpSyntaxTree.ParseText("""
            global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq;
            global using System.Threading; global using System.Threading.Tasks; global using Microsoft.AspNetCore.Builder;
            global using Microsoft.AspNetCore.Http; global using Microsoft.AspNetCore.Routing;
            global using Microsoft.Extensions.Configuration; global using Microsoft.Extensions.DependencyInjection;
            global using Microsoft.Extensions.Hosting; global using Microsoft.Extensions.Logging;
            """));
        var compilation = CSharpCompilation.Create("words", trees, References(), new(OutputKind.DynamicallyLinkedLibrary));
        foreach (var tree in trees)
        {
            var model = compilation.GetSemanticModel(tree);
            foreach (var text in tree.GetRoot().DescendantNodes().OfType<ExpressionSyntax>().Where(IsText))
                if (IsForPeople(model, text))
                    found.TryAdd(KeyOf(text), Path.GetRelativePath(Source, tree.FilePath));
        }

        return found;
    }

    // A text in one piece: of a sum of texts the whole sum.
    private static bool IsText(ExpressionSyntax node) =>
        node is LiteralExpressionSyntax { RawKind: (int)SyntaxKind.StringLiteralExpression } or InterpolatedStringExpressionSyntax or BinaryExpressionSyntax { RawKind: (int)SyntaxKind.AddExpression }
        && !(node.Parent is BinaryExpressionSyntax { RawKind: (int)SyntaxKind.AddExpression })
        && Pieces(node).All(piece => piece is LiteralExpressionSyntax or InterpolatedStringExpressionSyntax);

    private static bool IsForPeople(SemanticModel model, ExpressionSyntax text)
    {
        if (text is LiteralExpressionSyntax { Parent: InterpolationSyntax }) return false;
        SyntaxNode at = text;
        while (at.Parent is ConditionalExpressionSyntax or ParenthesizedExpressionSyntax or SwitchExpressionArmSyntax or SwitchExpressionSyntax
               or BinaryExpressionSyntax { RawKind: (int)SyntaxKind.CoalesceExpression })
        {
            if (at.Parent is ConditionalExpressionSyntax conditional && conditional.Condition == at) return false;
            if (at.Parent is SwitchExpressionArmSyntax arm && arm.Expression != at) return false;
            if (at is ExpressionSyntax inner && IsSentence(model.GetTypeInfo(inner).ConvertedType)) return true;
            at = at.Parent;
        }

        if (at is ExpressionSyntax whole && IsSentence(model.GetTypeInfo(whole).ConvertedType)) return true;
        return at.Parent switch
        {
            ArgumentSyntax argument => model.GetOperation(argument) is Microsoft.CodeAnalysis.Operations.IArgumentOperation { Parameter: { } parameter }
                && (IsLocalizable(parameter.GetAttributes()) || IsAsked(parameter)),
            ArrowExpressionClauseSyntax { Parent: MemberDeclarationSyntax member } => IsGivenBack(model.GetDeclaredSymbol(member)),
            ReturnStatementSyntax { Parent.Parent: MemberDeclarationSyntax member } => IsGivenBack(model.GetDeclaredSymbol(member)),
            _ => false,
        };
    }

    private static bool IsSentence(ITypeSymbol? type) => type?.Name is nameof(Sentence) or nameof(Phrase)
        && type.ContainingNamespace.ToDisplayString().StartsWith("Training.", StringComparison.Ordinal);

    private static bool IsAsked(IParameterSymbol parameter) => parameter.ContainingSymbol is IPropertySymbol { IsIndexer: true } indexer
        && indexer.ContainingType.Name == "IStringLocalizer" && parameter.Ordinal == 0;

    private static bool IsGivenBack(ISymbol? member) => member switch
    {
        IMethodSymbol method => IsLocalizable(method.GetReturnTypeAttributes()),
        IPropertySymbol property => IsLocalizable(property.GetAttributes()),
        _ => false,
    };

    private static bool IsLocalizable(IEnumerable<AttributeData> attributes) =>
        attributes.Any(attribute => attribute.AttributeClass?.Name == nameof(LocalizableAttribute));

    private static string KeyOf(ExpressionSyntax text)
    {
        var key = new StringBuilder();
        var gaps = 0;
        foreach (var piece in Pieces(text))
        {
            if (piece is LiteralExpressionSyntax literal) key.Append(literal.Token.ValueText);
            if (piece is not InterpolatedStringExpressionSyntax interpolated) continue;
            foreach (var part in interpolated.Contents)
            {
                if (part is InterpolatedStringTextSyntax words) key.Append(words.TextToken.ValueText);
                else key.Append(CultureInfo.InvariantCulture, $"{{{gaps++}{((InterpolationSyntax)part).FormatClause}}}");
            }
        }

        return key.ToString();
    }

    private static IEnumerable<ExpressionSyntax> Pieces(ExpressionSyntax text) =>
        text is BinaryExpressionSyntax { RawKind: (int)SyntaxKind.AddExpression } sum ? [.. Pieces(sum.Left), .. Pieces(sum.Right)] : [text];

    private static IEnumerable<string> Files(string ending) => Projects
        .SelectMany(project => Directory.GetFiles(Path.Combine(Source, project), "*" + ending, SearchOption.AllDirectories))
        .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
            && !file.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
            && !file.Contains("Migrations", StringComparison.Ordinal));

    private static IEnumerable<MetadataReference> References() =>
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
        .Where(path => !Projects.Contains(Path.GetFileNameWithoutExtension(path)))
        .Select(path => MetadataReference.CreateFromFile(path));

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Training.sln"))) return folder.FullName;
        throw new DirectoryNotFoundException("The tests run outside the repository.");
    }

    [GeneratedRegex(@"\bW\[""((?:[^""\\]|\\.)+)""")]
    private static partial Regex Asked();
}
