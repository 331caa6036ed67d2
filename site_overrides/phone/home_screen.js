// Pages behave otherwise on an iPhone's home screen than in its browser. Only iPhones and their like say where a page stands.

const { standalone } = /** @type {{standalone?: boolean}} */ (navigator);

export const isOnHomeScreen = standalone === true;
export const isInBrowserOfIphone = standalone === false;
