using MakerStudio.Web.Shell;

var builder = WebApplication.CreateBuilder(args);
builder.AddStudioShell();

var app = builder.Build();
app.UseStudioErrorPages();
app.UseAntiforgery();
app.MapGet("/health/live", () => "ok");
app.MapStudioShell();
app.Run();
