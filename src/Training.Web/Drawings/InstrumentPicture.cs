namespace Training.Web.Drawings;

/// <summary>What is read in a question, as plain data.</summary>
/// <param name="Name">What it is a picture of.</param>
/// <param name="Says">The same information in words; never what follows from it.</param>
public abstract record InstrumentPicture(string Name, string Says);

/// <summary>The display of a meter.</summary>
/// <param name="Name">What it is a picture of.</param>
/// <param name="Says">The same in words.</param>
/// <param name="Digits">The digits on the display.</param>
/// <param name="Unit">The unit on the display.</param>
/// <param name="IsClamp">Whether the meter is clamped around a cable; otherwise it has two leads.</param>
public sealed record MeterPicture(string Name, string Says, string Digits, string Unit, bool IsClamp) : InstrumentPicture(Name, Says);

/// <summary>A scale that is read at a line: of a hydrometer's float, or of a thermometer.</summary>
/// <param name="Name">What it is a picture of.</param>
/// <param name="Says">The same in words.</param>
/// <param name="Value">Where it stands.</param>
/// <param name="Division">The distance of two lines.</param>
/// <param name="Unit">The unit beside the scale; empty for none.</param>
/// <param name="Decimals">Decimal places of the numbers at the lines.</param>
/// <param name="IsFloat">Whether it is a float, whose scale grows downwards; otherwise a thermometer.</param>
public sealed record ScalePicture(string Name, string Says, decimal Value, decimal Division, string Unit, int Decimals, bool IsFloat)
    : InstrumentPicture(Name, Says)
{
    /// <summary>Every how many lines one has its number.</summary>
    /// <param name="isFloat">Whether it is a float.</param>
    public static int LinesOfNumber(bool isFloat) => isFloat ? 4 : 2;
}

/// <summary>A list of what is told.</summary>
/// <param name="Name">What it is a picture of.</param>
/// <param name="Says">The same in words.</param>
/// <param name="Rows">Each thing with its number as it is printed.</param>
public sealed record NotePicture(string Name, string Says, IReadOnlyList<NoteRow> Rows) : InstrumentPicture(Name, Says);

/// <summary>A row of a list.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Number">Its number and unit.</param>
public sealed record NoteRow(string Title, string Number);
