package county.bigtree.registry.records;

/**
 * One file of a folder: what the service answers at an address to whoever asks for the
 * folder.
 *
 * @param file its path in the folder
 * @param address where it is read
 * @param kind what it is, in the plural; by which it is told if it is withheld
 * @param forWhom who may see such things
 */
record Sheet(String file, String address, String kind, String forWhom) {

}
