namespace MakerStudio.Web.Account;

/// <summary>What the host calls to have people sign in.</summary>
public static class AccountSetup
{
    public static WebApplicationBuilder AddStudioAccounts(this WebApplicationBuilder builder)
    {
        builder.Services.AddScoped<CurrentPerson>();
        return builder;
    }
}
