using Training.Web.Startup;

var root = House.FindRoot(AppContext.BaseDirectory);
var builder = WebApplication.CreateBuilder(new WebApplicationOptions
{
    Args = args,
    ContentRootPath = AppContext.BaseDirectory,
    WebRootPath = Path.Combine(root, "wwwroot"),
});
builder.AddHouse(root);
var app = builder.Build();
await app.Prepare();
app.UseHouse();
app.Announce();
await app.RunAsync();

/// <summary>The web server; public so that tests can start it.</summary>
public partial class Program
{
    private Program()
    {
    }
}
