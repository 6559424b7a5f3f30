namespace MakerStudio.Web.Hosting;

/// <summary>What browsers are told to refuse.</summary>
internal static class SecurityHeaders
{
    /// <summary>
    /// Everything comes from this server. Inline styles are allowed because the component library writes its theme and
    /// positions so; inline scripts are not.
    /// </summary>
    public static HeaderPolicyCollection Policy() => new HeaderPolicyCollection()
        .AddContentTypeOptionsNoSniff()
        .AddFrameOptionsDeny()
        .AddReferrerPolicySameOrigin()
        .AddCrossOriginOpenerPolicy(policy => policy.SameOrigin())
        .AddCrossOriginResourcePolicy(policy => policy.SameOrigin())
        .AddStrictTransportSecurityMaxAge()
        .AddContentSecurityPolicy(policy =>
        {
            policy.AddDefaultSrc().Self();
            policy.AddScriptSrc().Self();
            policy.AddStyleSrc().Self().UnsafeInline();
            policy.AddImgSrc().Self().Data().Blob();
            policy.AddFontSrc().Self();
            policy.AddConnectSrc().Self();
            policy.AddObjectSrc().None();
            policy.AddBaseUri().Self();
            policy.AddFormAction().Self();
            policy.AddFrameAncestors().None();
        })
        .AddPermissionsPolicy(policy =>
        {
            policy.AddCamera().None();
            policy.AddGeolocation().None();
            policy.AddMicrophone().None();
            policy.AddPayment().None();
            policy.AddUsb().None();
        });
}
