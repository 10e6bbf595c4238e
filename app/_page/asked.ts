/** What an address asks, as Next hands it over. */
export type Asked = Readonly<Record<string, string | string[] | undefined>>;
export type PageAsked = { readonly searchParams: Promise<Asked> };
