/** The one document of the page; everything in it is built by the script. */
export const pageDocument = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1, interactive-widget=resizes-content">
<meta name="color-scheme" content="light dark">
<title>Evenset, local workspace</title>
<link rel="icon" href="data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 16 16'%3E%3Crect width='16' height='16' rx='4' fill='%230c5f56'/%3E%3Cpath d='M4 5h8M4 8h8M4 11h8' stroke='white' stroke-width='1.6'/%3E%3C/svg%3E">
<link rel="stylesheet" href="/page/page.css">
</head>
<body><div id="page"></div><script type="module" src="/page/page.js"></script></body>
</html>
`;

export const pagePolicy =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
  "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
