using Training.Records.Results;

namespace Training.Web.Features.WrongOrders;

/// <summary>A common wrong order.</summary>
/// <param name="Order">The order.</param>
/// <param name="Source">Where it was given.</param>
public sealed record WrongOrderPage(WrongOrderView Order, WorkSource Source);
