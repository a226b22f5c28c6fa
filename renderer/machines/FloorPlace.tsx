export function FloorPlace() {
  return <p>...</p>;
}
