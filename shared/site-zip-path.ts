/** Path of the zip of the whole site, from the site's root. */
export const siteZipPath = 'whole-site.zip';
