namespace Training.Sequencing.Procedures;

/// <summary>The name of a procedure: lower-case letters, digits and hyphens, the same as its file's name.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct ProcedureId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>The name of a step or of a decoy; both share one name space within a procedure.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct StepId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>The name of a rule within a procedure.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct RuleId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>The name of something on the vehicle that has a state, such as <c>key</c> or <c>isolator</c>.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct FactId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>A state that a fact can have, such as <c>off</c>.</summary>
/// <param name="Value">The text of the value, compared exactly.</param>
public readonly record struct FactValue(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>A kind of vehicle that a procedure tells apart, such as <c>truck-k26</c>.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct VariantId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>The name of a one-of group: just one of its steps is done.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct ChoiceId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}
