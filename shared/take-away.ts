/** Where the whole site stands as one file, from the site's root. */
export const siteZipPath = 'whole-site.zip';
